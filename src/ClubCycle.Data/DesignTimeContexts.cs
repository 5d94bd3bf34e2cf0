using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace ClubCycle.Data;

/// <summary>Lets <c>dotnet ef</c> write migrations without a database or a host.</summary>
internal sealed class DesignTimeContexts : IDesignTimeDbContextFactory<ClubCycleDb>
{
    public ClubCycleDb CreateDbContext(string[] args)
    {
        var options = new DbContextOptionsBuilder<ClubCycleDb>();
        DataSetup.Configure(options, "Host=localhost");
        return new ClubCycleDb(options.Options);
    }
}
