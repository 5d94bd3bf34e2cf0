using ClubCycle.Data.Backups;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Commands;

/// <summary>A restore that was killed left a database that nobody checked: no app works with it.</summary>
internal static class HalfDoneRestore
{
    public static async Task RefuseAsync(string connectionString, CancellationToken cancel = default)
    {
        if (await RestoreStore.IsHalfDoneAsync(connectionString, cancel))
        {
            throw new OptionsValidationException("restore", typeof(HalfDoneRestore), ["A restore was interrupted on this database. Run the restore command again: it puts back what was there and starts over."]);
        }
    }
}
