using ClubCycle.Data.Audit;
using ClubCycle.Data.Backups;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace ClubCycle.Data.Tests.Schema;

/// <summary>ASVS 16.4.2: what is noted stays as it was noted.</summary>
public sealed class AuditTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_note_cannot_be_changed()
    {
        await using var db = await OpenAsync();

        await RefusedAsync(() => db.Audit.ExecuteUpdateAsync(row => row.SetProperty(a => a.What, "nothing.happened"), Cancel));
    }

    [Fact]
    public async Task A_note_cannot_be_taken_away()
    {
        await using var db = await OpenAsync();

        await RefusedAsync(() => db.Audit.ExecuteDeleteAsync(Cancel));
    }

    [Fact]
    public async Task The_notes_cannot_be_emptied()
    {
        await using var owner = await PlainSql.OpenEverywhereAsync(data.OwnerConnectionString, Cancel);

        await RefusedAsync(() => owner.RunAsync("truncate club.audit", Cancel));
    }

    [Fact]
    public async Task Refusals_are_noted_once_a_minute_for_a_person_however_many_come_at_once()
    {
        await using var db = await OpenAsync();
        var trail = new AccountTrail(data.Contexts, data.Clock);
        var person = NewId.Create();

        await Task.WhenAll(Enumerable.Range(0, 5).Select(_ => trail.NoteRefusalAsync(db.ClubId, person, "account.sign-in-refused", cancel: Cancel)));

        Assert.Equal(1, await db.Audit.CountAsync(a => a.By == person, Cancel));
    }

    private async Task<ClubCycleDb> OpenAsync() => await data.Contexts.OpenAsync(ClubScope.Of((await data.NewClubAsync()).Id), Cancel);

    private static async Task RefusedAsync(Func<Task> work)
    {
        var refused = await Assert.ThrowsAsync<PostgresException>(work);
        Assert.Equal("The audit trail is only added to.", refused.MessageText);
    }
}
