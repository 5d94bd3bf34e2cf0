namespace ClubCycle.Web.Features.Print;

/// <summary>Plans and draws pages away from every open screen: a few at a time, each within a time.</summary>
internal sealed class PrintPress : IDisposable
{
    private const int AtOnce = 2;

    private readonly SemaphoreSlim _places = new(AtOnce);

    /// <summary>Waiting for a place, planning and drawing together.</summary>
    public TimeSpan Longest { get; init; } = TimeSpan.FromSeconds(30);

    public async Task<IResult> RunAsync(Func<CancellationToken, Task<IResult>> print, CancellationToken cancel)
    {
        using var time = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        time.CancelAfter(Longest);
        try
        {
            await _places.WaitAsync(time.Token);
            try
            {
                return await print(time.Token);
            }
            finally
            {
                _places.Release();
            }
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return TypedResults.Text(PrintText.Busy, statusCode: StatusCodes.Status503ServiceUnavailable);
        }
    }

    public void Dispose() => _places.Dispose();
}
