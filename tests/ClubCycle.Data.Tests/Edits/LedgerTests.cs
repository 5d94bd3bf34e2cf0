using ClubCycle.NothingLost.Editing;

namespace ClubCycle.Data.Tests.Edits;

/// <summary>The judge of concurrent histories.</summary>
public sealed class LedgerTests
{
    [Theory]
    [InlineData("nothing happened", "a", "")]
    [InlineData("one after the other", "c", "a>b b>c")]
    [InlineData("undone and done again", "b", "a>b b>a a>b")]
    public void A_history_that_some_order_explains_is_fine(string what, string now, string writes) => Assert.True(Unexplained(now, writes) is null, what);

    [Theory]
    [InlineData("a write that is gone", "a", "a>b")]
    [InlineData("two over the same", "c", "a>b a>c")]
    [InlineData("a value that nobody wrote", "x", "a>b")]
    [InlineData("a circle that nothing leads to", "b", "a>b x>y y>x")]
    public void A_history_that_no_order_explains_is_told(string what, string now, string writes) => Assert.False(Unexplained(now, writes) is null, what);

    private static string? Unexplained(string now, string writes)
    {
        var ledger = new Ledger();
        foreach (var write in writes.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            ledger.Acknowledge("thing", write[..1], write[2..]);
        }

        return ledger.Unexplained("thing", "a", now);
    }
}
