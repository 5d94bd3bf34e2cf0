namespace ClubCycle.Web.Account;

/// <summary>What the application remembers about its first run.</summary>
internal sealed class SetupOnce : IDisposable
{
    private volatile bool _isDone;

    /// <summary>Of two people who set up at the same moment the second finds the club made.</summary>
    public SemaphoreSlim Turn { get; } = new(1);

    /// <summary>Once there is a club, there is one for good: nobody asks the database again.</summary>
    public bool IsDone
    {
        get => _isDone;
        set => _isDone = value;
    }

    public void Dispose() => Turn.Dispose();
}
