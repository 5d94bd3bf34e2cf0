using System.Diagnostics;
using ClubCycle.NothingLost.Editing;

namespace ClubCycle.Data.Tests.Edits;

/// <summary>Some of what <c>deploy/bench.sh editing</c> plays thousands of.</summary>
public sealed class EditingHistoryTests(ClubData data, ITestOutputHelper output) : IClassFixture<ClubData>
{
    private const int Most = 300;
    private static readonly TimeSpan Time = TimeSpan.FromSeconds(25);

    [Fact]
    public async Task Eight_coaches_who_edit_at_once_lose_nothing_and_never_meet_another_squad_s_texts()
    {
        await using var first = EditingHistory.Node(data.ConnectionString);
        await using var second = EditingHistory.Node(data.ConnectionString);
        var seed = Environment.TickCount & 0xFFFFFF;
        var (played, written, refused) = (0, 0, 0);
        for (var watch = Stopwatch.StartNew(); played < Most && watch.Elapsed < Time; played++)
        {
            var result = await EditingHistory.PlayAsync([first, second], seed + played);
            (written, refused) = (written + result.Acknowledged, refused + result.Refused);
        }

        output.WriteLine($"{played} histories from seed {seed}: {written} writes acknowledged, {refused} refused");
        Assert.InRange(refused, 1, written);
    }
}
