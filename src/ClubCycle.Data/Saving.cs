using ClubCycle.Planning;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace ClubCycle.Data;

/// <summary>Turns what the database refuses into what a person can do about it.</summary>
internal static class Saving
{
    public const string StintsApart = "ex_stints_days";
    public const string SameMatch = "pk_fixtures";
    public const string TemplateNames = "ix_templates_club_id_name";
    public const string OnePin = "pk_pins";
    public const string OneLength = "pk_phase_lengths";

    /// <summary>Saves, or says why not. Anything the database refuses for a reason of ours throws.</summary>
    /// <param name="changed">The answer when somebody else saved first.</param>
    public static async Task<Problem?> TrySaveAsync(this ClubCycleDb db, Problem changed, CancellationToken cancel)
    {
        try
        {
            await db.SaveChangesAsync(cancel);
            return null;
        }
        catch (DbUpdateConcurrencyException)
        {
            return changed;
        }
        catch (DbUpdateException refused) when (refused.InnerException is PostgresException { ConstraintName: { } constraint } && ProblemOf(constraint) is { } problem)
        {
            return problem;
        }
        catch (PostgresException refused) when (refused.ConstraintName is { } constraint && ProblemOf(constraint) is { } problem)
        {
            // Found at the end of the transaction only.
            return problem;
        }
    }

    /// <summary>Saves and commits, or says why not.</summary>
    /// <param name="changed">The answer when somebody else saved first.</param>
    public static async Task<Problem?> TryCommitAsync(this ClubCycleDb db, Problem changed, CancellationToken cancel)
    {
        if (await db.TrySaveAsync(changed, cancel) is { } problem)
        {
            return problem;
        }

        // A late cancel must not leave a coach in doubt.
        await db.Database.CommitTransactionAsync(CancellationToken.None);
        return null;
    }

    private static Problem? ProblemOf(string constraint) => constraint switch
    {
        StintsApart => new Problem("season.stints-overlap", "Two stints of the season share a day. Leave at least a day between them, or join them.", "season.stints"),
        SameMatch => Refusal.Meanwhile("fixture"),
        TemplateNames => new Problem("template.name-taken", "The club's library already has a template of this name. Choose another title.", "template.name"),
        OnePin => Refusal.Meanwhile("session"),
        OneLength => Refusal.Meanwhile("phase"),
        _ => null,
    };
}
