using ClubCycle.Web.Hosting;
using ClubCycle.Web.Tests.Commands;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>ASVS 12.3.1.</summary>
public sealed class DatabaseTlsTests
{
    [Theory]
    [InlineData("Host=db.example.org", false)]
    [InlineData("Host=db.example.org;SSL Mode=Prefer", false)]
    [InlineData("Host=db.example.org;SSL Mode=Require", false)]
    [InlineData("Host=db.example.org;SSL Mode=VerifyCA", false)]
    [InlineData("Host=192.0.2.7", false)]
    [InlineData("Host=localhost,db.example.org:5433", false)]
    [InlineData("Host=localhost.example.org", false)]
    [InlineData("Host=db.example.org;SSL Mode=VerifyFull", true)]
    [InlineData("Host=localhost", true)]
    [InlineData("Host=127.0.0.1", true)]
    [InlineData("Host=::1", true)]
    [InlineData("Host=/var/run/postgresql", true)]
    [InlineData("Host=localhost:5433,127.0.0.1:5434", true)]
    public void A_database_on_another_machine_needs_TLS_with_a_checked_certificate(string address, bool taken)
    {
        var refused = Record.Exception(() => DatabaseTls.Checked(address, allowed: false));

        Assert.Equal(taken, refused is null);
        Assert.Equal(address, DatabaseTls.Checked(address, allowed: true));
    }

    [Theory]
    [InlineData("serve")]
    [InlineData("migrate")]
    [InlineData("backup")]
    public async Task A_start_without_it_is_refused_in_one_sentence_that_says_what_to_do(string command)
    {
        var run = await CommandRun.OfAsync([command], environment: new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = "Host=192.0.2.7;Database=x;Username=x;Password=secret-word" });

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("SSL Mode=VerifyFull", Assert.Single(run.Errors.TrimEnd().Split('\n')), StringComparison.Ordinal);
        Assert.DoesNotContain("secret-word", run.Errors + run.Output, StringComparison.Ordinal);
    }
}
