using ClubCycle.Web.Features.Both;
using ClubCycle.Web.Features.FirstSteps;
using ClubCycle.Web.Features.Guardian;
using ClubCycle.Web.Features.Plans;
using ClubCycle.Web.Features.Players;
using ClubCycle.Web.Features.Print;
using ClubCycle.Web.Features.Seasons;
using ClubCycle.Web.Features.Settings;
using ClubCycle.Web.Features.Squads;
using ClubCycle.Web.Features.Templates;
using ClubCycle.Web.Features.Welfare;

namespace ClubCycle.Web.Features;

/// <summary>What the signed-in screens need.</summary>
public static class ScreenSetup
{
    public static IServiceCollection AddScreens(this IServiceCollection services) => services
        .AddScoped<PlanActions>()
        .AddScoped<EditActions>()
        .AddScoped<LastSaveActions>()
        .AddScoped<RevisionActions>()
        .AddScoped<SeasonActions>()
        .AddScoped<NextSeasonActions>()
        .AddScoped<SquadActions>()
        .AddScoped<TemplateActions>()
        .AddScoped<PlayerActions>()
        .AddScoped<GuardianActions>()
        .AddScoped<WelfareActions>()
        .AddScoped<ExportActions>()
        .AddScoped<ClubActions>()
        .AddScoped<FirstStepsActions>()
        .AddSingleton<PrintPress>();
}
