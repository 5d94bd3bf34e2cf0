using ClubCycle.Data.Edits;
using ClubCycle.Web.Account;

namespace ClubCycle.Web.Features.Both;

/// <summary>Who saved something last, for those who may change it themselves; null for others and when it is not known.</summary>
public sealed class LastSaveActions(CurrentCoach coaches, LastSaveStore saves)
{
    public async Task<LastSave?> OfTemplateAsync(Guid template, CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out _, out _) ? await saves.OfTemplateAsync(template, cancel) : null;

    public async Task<LastSave?> OfSquadAsync(Guid squad, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out _) ? await saves.OfRowAsync(squad, squad, cancel) : null;

    public async Task<LastSave?> OfMatchAsync(Guid squad, Guid match, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out _) ? await saves.OfRowAsync(match, squad, cancel) : null;

    public async Task<LastSave?> OfSeasonAsync(Guid season, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out _, out _) ? await saves.OfRowAsync(season, null, cancel) : null;

    public async Task<LastSave?> OfClubAsync(CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out _, out _) ? await saves.OfClubAsync(cancel) : null;
}
