using System.Buffers.Binary;
using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using ClubCycle.Web.Hosting;
using ClubCycle.Web.Tests.Commands;
using Npgsql;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>ASVS 12.3.1 and 12.3.2.</summary>
public sealed class DatabaseTlsTests
{
    /// <summary>PostgreSQL's documentation, 54.7, SSLRequest.</summary>
    private const int AsksForTls = 80_877_103;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

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

    [Fact]
    public async Task A_server_whose_certificate_nobody_signed_hears_nothing_from_us()
    {
        using var certificate = TestCertificate.Make("127.0.0.1");
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var heard = PretendAsync(listener, certificate);
        await using NpgsqlConnection connection = new($"Host=127.0.0.1;Port={((IPEndPoint)listener.LocalEndpoint).Port};Database=x;Username=x;Password=secret-word;SSL Mode=VerifyFull;Timeout=60;Pooling=false");

        var refused = await Assert.ThrowsAsync<NpgsqlException>(() => connection.OpenAsync(Cancel));

        Assert.IsType<AuthenticationException>(refused.GetBaseException());
        Assert.Equal(0, await heard);
    }

    /// <summary>A PostgreSQL that agrees to TLS and shows a certificate of its own. How many bytes it was told over it.</summary>
    private static async Task<int> PretendAsync(TcpListener listener, X509Certificate2 certificate)
    {
        using var client = await listener.AcceptTcpClientAsync(Cancel);
        var stream = client.GetStream();
        var asked = new byte[8];
        await stream.ReadExactlyAsync(asked, Cancel);
        while (BinaryPrimitives.ReadInt32BigEndian(asked.AsSpan(4)) != AsksForTls)
        {
            // It may ask for Kerberos first.
            await stream.WriteAsync("N"u8.ToArray(), Cancel);
            await stream.ReadExactlyAsync(asked, Cancel);
        }

        await stream.WriteAsync("S"u8.ToArray(), Cancel);
        await using SslStream tls = new(stream);
        try
        {
            await tls.AuthenticateAsServerAsync(certificate);
            return await tls.ReadAsync(new byte[1_024], Cancel);
        }
        catch (Exception hungUp) when (hungUp is AuthenticationException or IOException)
        {
            return 0;
        }
    }
}

/// <summary>Signed by itself, so that nobody trusts it.</summary>
internal static class TestCertificate
{
    public static X509Certificate2 Make(string name)
    {
        using var key = RSA.Create(2048);
        CertificateRequest request = new($"CN={name}", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        SubjectAlternativeNameBuilder names = new();
        if (IPAddress.TryParse(name, out var address))
        {
            names.AddIpAddress(address);
        }
        else
        {
            names.AddDnsName(name);
        }

        request.CertificateExtensions.Add(names.Build());
        var now = TimeProvider.System.GetUtcNow();
        return request.CreateSelfSigned(now.AddDays(-1), now.AddDays(1));
    }
}
