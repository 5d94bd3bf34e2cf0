using ClubCycle.Data.Clubs;
using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Web.Account;
using NodaTime;

namespace ClubCycle.Web.Features.Seasons;

/// <summary>What the next season could be.</summary>
/// <param name="Proposed">Null when the last season cannot simply be repeated; then there are problems.</param>
/// <param name="Today">In the club's zone.</param>
/// <param name="Squads">That follow these dates.</param>
public sealed record NextSeasonView(Season Last, Season? Proposed, IReadOnlyList<Problem> Problems, LocalDate Today, IReadOnlyList<StandingSquad> Squads);

/// <summary>Takes squads into their next cycle. Coaches see what it would be; a head coach saves it.</summary>
public sealed class NextSeasonActions(CurrentCoach coaches, SeasonStore seasons, SeasonPreviews previews, NextSeasonStore next, ClubStore clubs)
{
    /// <param name="squad">Null for the club's dates and all squads that follow them.</param>
    public async Task<Result<NextSeasonView>> ProposeAsync(Guid? squad, CancellationToken cancel = default)
    {
        if (!(await MayLookAsync(squad, cancel)).TryGet(out _, out var problems))
        {
            return new Result<NextSeasonView>.Failed(problems);
        }

        var all = (await seasons.ListAsync(cancel)).OrderBy(s => s.Season.Cycle.End).ToList();
        var chain = all.Exists(s => s.SquadId == squad) ? all.FindAll(s => s.SquadId == squad) : all.FindAll(s => s.SquadId is null);
        if (chain.Count == 0)
        {
            return new Problem("season.missing", "There is no season yet that a next one could follow. Set the season dates first.", "season");
        }

        var proposed = NextSeason.Propose(chain[^1].Season, chain[0].Season.Stints[0].First).TryGet(out var season, out var found) ? season : null;
        return new NextSeasonView(chain[^1].Season, proposed, found, await clubs.TodayAsync(cancel), await next.StandingAsync(squad, cancel));
    }

    /// <summary>Each squad's next year. Nothing is saved.</summary>
    public async Task<Result<IReadOnlyList<PreviewedYear>>> PreviewAsync(Guid? squad, Season season, IReadOnlyList<SquadStep> steps, CancellationToken cancel = default)
    {
        if (!(await MayLookAsync(squad, cancel)).TryGet(out _, out var problems))
        {
            return new Result<IReadOnlyList<PreviewedYear>>.Failed(problems);
        }

        var standing = (await next.StandingAsync(squad, cancel)).ToDictionary(s => s.SquadId);
        return new Result<IReadOnlyList<PreviewedYear>>.Ok([.. (await previews.WithSeasonAsync(squad, season, Stepped, cancel)).Where(y => standing.ContainsKey(y.SquadId))]);

        PlanRequest Stepped(PlanRequest request) => steps.FirstOrDefault(s => s.SquadId == request.Squad.Key) is not { } step ? request : request with
        {
            Squad = request.Squad with { TrainingAge = step.TrainingAge ?? request.Squad.TrainingAge },
            Template = step.NewestTemplate && standing.GetValueOrDefault(step.SquadId)?.Newest is { } newest ? newest : request.Template,
        };
    }

    public async Task<Result<Guid>> SaveAsync(Guid? squad, Season season, IReadOnlyList<SquadStep> steps, CancellationToken cancel = default) =>
        !(await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems) ? new Result<Guid>.Failed(problems)
        : await next.SaveAsync(squad, season.PreviousLastDay, season.Stints, steps, coach.UserId, cancel);

    private async Task<Result<Coach>> MayLookAsync(Guid? squad, CancellationToken cancel) =>
        squad is { } one ? await coaches.ForSquadAsync(one, cancel) : await coaches.HeadAsync(cancel);
}
