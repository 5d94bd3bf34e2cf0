using Bunit;
using ClubCycle.Data.Plans;
using ClubCycle.Web.Features.Plans;

namespace ClubCycle.Web.Tests.Features;

public sealed class LatestRunTests
{
    [Fact]
    public async Task Work_that_ends_within_a_moment_shows_nothing()
    {
        await using var context = new BunitContext();
        using var run = new LatestRun();
        var shown = Render(context, run);

        Assert.True(await shown.InvokeAsync(() => run.RunAsync((_, _) => Task.CompletedTask)));

        Assert.Empty(shown.Markup.Trim());
    }

    [Fact]
    public async Task Longer_work_says_how_far_it_is_and_can_be_cancelled()
    {
        await using var context = new BunitContext();
        using var run = new LatestRun();
        var shown = Render(context, run);

        var work = shown.InvokeAsync(() => run.RunAsync(async (progress, cancel) =>
        {
            progress.Report(new SquadsDone(7, 24));
            await Task.Delay(Timeout.Infinite, cancel);
        }));

        shown.WaitForAssertion(() => Assert.Contains("Planning squads, 7 of 24", shown.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(10));
        await shown.Find("button").ClickAsync();
        Assert.False(await work);
        shown.WaitForAssertion(() => Assert.Equal("Nothing was saved.", shown.Find(".notice").TextContent), TimeSpan.FromSeconds(10));
    }

    [Fact]
    public async Task Starting_again_cancels_the_run_before_without_a_word()
    {
        await using var context = new BunitContext();
        using var run = new LatestRun();
        var shown = Render(context, run);

        var first = shown.InvokeAsync(() => run.RunAsync((_, cancel) => Task.Delay(Timeout.Infinite, cancel)));
        var second = await shown.InvokeAsync(() => run.RunAsync((_, _) => Task.CompletedTask));

        Assert.True(second);
        Assert.False(await first);
        Assert.Empty(shown.FindAll(".notice"));
    }

    [Fact]
    public async Task A_late_result_of_an_earlier_run_is_not_wanted()
    {
        using var run = new LatestRun();
        var late = new TaskCompletionSource();

        var first = run.RunAsync((_, _) => late.Task);
        await run.RunAsync((_, _) => Task.CompletedTask);
        late.SetResult();

        Assert.False(await first);
    }

    [Fact]
    public async Task What_goes_wrong_is_not_swallowed()
    {
        using var run = new LatestRun();

        await Assert.ThrowsAsync<InvalidOperationException>(() => run.RunAsync((_, _) => throw new InvalidOperationException("A bug")));

        Assert.False(run.IsRunning);
    }

    private static IRenderedComponent<RunProgress> Render(BunitContext context, LatestRun run) =>
        context.Render<RunProgress>(p => p.Add(c => c.Run, run).Add(c => c.Name, "Planning squads").Add(c => c.Stopped, "Nothing was saved."));
}
