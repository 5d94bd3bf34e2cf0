using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Data.Feeds;

/// <summary>Which texts of a squad's feed must lie ready.</summary>
public sealed class FeedVariants(IClubDbFactory contexts)
{
    /// <summary>What the live links of the squad ask for and what new ones usually ask for, each once.</summary>
    public async Task<IReadOnlyList<FeedOptions>> InUseAsync(Guid squadId, AgeGroup ages, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var codes = await (
            from link in db.Links
            join player in db.Players on new { link.ClubId, Id = link.PlayerId } equals new { player.ClubId, player.Id }
            where player.SquadId == squadId && link.RevokedAt == null
            select link.Options).Distinct().ToListAsync(cancel);
        return
        [
            .. codes.Select(code => FeedOptions.Of(code) ?? throw new InvalidOperationException($"A link of squad {squadId} has the unknown options '{code}'."))
                .Append(new FeedOptions()).Append(FeedOptions.UsualFor(ages)).Distinct().OrderBy(options => options.Code, StringComparer.Ordinal),
        ];
    }

    /// <summary>Removes texts that nothing renders any more, so that a link never meets one that grew old.</summary>
    public async Task KeepOnlyAsync(Guid squadId, IReadOnlyCollection<string> variants, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await db.FeedBodies.Where(b => b.SquadId == squadId && !variants.Contains(b.Variant)).ExecuteDeleteAsync(cancel);
    }
}
