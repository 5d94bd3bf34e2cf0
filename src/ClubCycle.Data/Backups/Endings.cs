using Npgsql;
using NodaTime;

namespace ClubCycle.Data.Backups;

/// <summary>A player who was erased, by the id alone.</summary>
public sealed record ErasedPlayer(Guid Club, Guid Player, Instant At);

/// <summary>A guardian's no about one player, by ids alone.</summary>
/// <param name="Answer">As the database has it.</param>
public sealed record GuardianNo(Guid Club, Guid Player, string Answer, LocalDate On);

/// <summary>What was ended in a database, and who may still sign in: by ids alone, so that an older backup does not bring back what is over.</summary>
/// <param name="Clubs">Of which this is known.</param>
/// <param name="Links">Revoked, as long as the database remembers them.</param>
/// <param name="Protected">Players who are on no list.</param>
/// <param name="Accounts">All that there are: whoever has none was removed, or is newer.</param>
/// <param name="Guardians">Who said no, or took a yes back, and has not changed their mind since.</param>
public sealed record Endings(
    IReadOnlyList<Guid> Clubs, IReadOnlyList<ErasedPlayer> Erased, IReadOnlyList<Guid> Links, IReadOnlyList<Guid> Protected, IReadOnlyList<Guid> Accounts, IReadOnlyList<GuardianNo>? Guardians = null)
{
    private const string ProtectsSince = "20261125232300_ProtectPlayersAndKeepErasures";
    private const string AsksGuardiansSince = "20261126070729_AskGuardiansAndTellOfExports";

    /// <param name="connection">Sees every club.</param>
    /// <param name="schema">The database's last migration.</param>
    internal static async Task<Endings> ReadAsync(NpgsqlConnection connection, string schema, CancellationToken cancel)
    {
        var knowsErasures = string.CompareOrdinal(schema, ProtectsSince) >= 0;
        var erased = knowsErasures
            ? await connection.ListAsync(
                "select club_id, id, at from club.erasures order by at, id", row => new ErasedPlayer(row.GetGuid(0), row.GetGuid(1), Instant.FromDateTimeUtc(row.GetDateTime(2))), cancel)
            : [];
        var guardians = string.CompareOrdinal(schema, AsksGuardiansSince) >= 0
            ? await connection.ListAsync(
                "select club_id, player_id, answer, answered_on from club.guardian_consents where answer in ('Refused', 'TakenBack') order by 1, 2",
                row => new GuardianNo(row.GetGuid(0), row.GetGuid(1), row.GetString(2), LocalDate.FromDateOnly(row.GetFieldValue<DateOnly>(3))), cancel)
            : [];
        return new Endings(
            await IdsAsync("select club_id from club.clubs order by 1"), erased,
            await IdsAsync("select id from club.links where revoked_at is not null order by 1"),
            knowsErasures ? await IdsAsync("select id from club.players where protected order by 1") : [],
            await IdsAsync("select id from accounts.users order by 1"), guardians);

        async Task<IReadOnlyList<Guid>> IdsAsync(string sql) => await connection.ListAsync(sql, row => row.GetGuid(0), cancel);
    }
}
