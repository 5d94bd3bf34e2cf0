using Bunit;
using ClubCycle.Planning.Phases;
using ClubCycle.Web.Parts;
using ClubCycle.Web.Tests.Shell;

namespace ClubCycle.Web.Tests.Parts;

public sealed class PhaseBandTests
{
    public static TheoryData<PhaseKind, string> Names => new()
    {
        { PhaseKind.InSeason, "In season" },
        { PhaseKind.Break, "Break" },
        { PhaseKind.Recovery, "Recovery" },
        { PhaseKind.AerobicBuild, "Aerobic build" },
        { PhaseKind.Mixed, "Mixed" },
        { PhaseKind.PreSeason, "Pre-season" },
        { PhaseKind.Restore, "Restore" },
    };

    [Theory]
    [MemberData(nameof(Names))]
    public async Task The_name_is_written_in_the_band(PhaseKind kind, string name)
    {
        await using var context = new BunitContext();

        Assert.Equal(name, context.Render<PhaseBand>(p => p.Add(c => c.Kind, kind)).Find(".phase-name").TextContent);
    }

    [Fact]
    public async Task Every_phase_has_a_ground_of_its_own_in_the_style_sheet()
    {
        await using var context = new BunitContext();

        var grounds = Enum.GetValues<PhaseKind>()
            .Select(kind => context.Render<PhaseBand>(p => p.Add(c => c.Kind, kind)).Find(".phase").ClassList[1])
            .Select(name => StyleSheet.Base.Declarations($".{name}").Single(d => d.Name == "background").Value)
            .ToList();

        Assert.Distinct(grounds);
    }

    [Theory]
    [InlineData(1, "1 week")]
    [InlineData(12, "12 weeks")]
    public async Task Its_length_is_told_in_weeks(int weeks, string told)
    {
        await using var context = new BunitContext();

        Assert.Equal(told, context.Render<PhaseBand>(p => p.Add(c => c.Kind, PhaseKind.Mixed).Add(c => c.Weeks, weeks)).Find(".phase").GetAttribute("title"));
    }
}
