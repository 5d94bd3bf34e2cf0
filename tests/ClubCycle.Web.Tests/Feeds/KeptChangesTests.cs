using ClubCycle.Data.Live;
using ClubCycle.Web.Features.Feeds;

namespace ClubCycle.Web.Tests.Feeds;

public sealed class KeptChangesTests
{
    private static readonly Guid Club = Guid.Parse("00000001-0000-0000-0000-000000000000");
    private static readonly Guid Squad = Guid.Parse("00000002-0000-0000-0000-000000000000");
    private static readonly Guid Other = Guid.Parse("00000004-0000-0000-0000-000000000000");

    [Fact]
    public void A_change_makes_old_what_it_concerns_and_nothing_else()
    {
        Assert.Equal((true, false), Old(new ClubChange(Club, Squad, null)));
        Assert.Equal((false, true), Old(new ClubChange(Club, Other, null)));
        Assert.Equal((true, true), Old(new ClubChange(Club, null, null)));
        Assert.Equal((false, false), Old(new ClubChange(Guid.Parse("00000008-0000-0000-0000-000000000000"), null, null)));
    }

    [Fact]
    public void After_a_time_of_silence_everything_is_old()
    {
        var changes = new ClubChanges();
        var kept = new KeptChanges(changes);
        var before = kept.Of(Club, Squad);

        changes.TellAll();

        Assert.NotEqual(before, kept.Of(Club, Squad));
    }

    private static (bool OfSquad, bool OfOther) Old(ClubChange change)
    {
        var changes = new ClubChanges();
        var kept = new KeptChanges(changes);
        var (squad, other) = (kept.Of(Club, Squad), kept.Of(Club, Other));
        changes.Tell(change);
        return (squad != kept.Of(Club, Squad), other != kept.Of(Club, Other));
    }
}
