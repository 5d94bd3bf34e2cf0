using System.Text.RegularExpressions;
using ClubCycle.Data.Embedded;
using ClubCycle.Web.Account;
using ClubCycle.Web.Features.Feeds;
using ClubCycle.Web.Features.Notices;
using ClubCycle.Web.Hosting;
using YamlDotNet.Core;
using YamlDotNet.Serialization;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>docker-compose.yml as far as it can be judged without a container engine: its form, and its names against the program's.</summary>
public sealed partial class ComposeTests
{
    private static readonly string Root = RootOf(AppContext.BaseDirectory);

    /// <summary>What the framework reads by itself.</summary>
    private static readonly string[] OfTheFramework = ["ASPNETCORE_URLS", "OTEL_EXPORTER_OTLP_ENDPOINT", "OTEL_EXPORTER_OTLP_PROTOCOL", "OTEL_SERVICE_NAME"];

    private static readonly Dictionary<string, Service> Services = Read();

    [Fact]
    public void Every_setting_of_our_programs_is_one_that_they_read()
    {
        string[] known =
        [
            .. OfTheFramework, "ConnectionStrings__ClubCycle", "CLUBCYCLE_DATA", "Logging__Format", KeyFile.Setting.Replace(":", "__", StringComparison.Ordinal), DatabaseTls.Allow.Replace(":", "__", StringComparison.Ordinal), BackupRole.Setting.Replace(":", "__", StringComparison.Ordinal), .. SecretFiles.Names, .. SecretFiles.Names.Select(name => name + "_FILE"),
            .. Of<TrustedProxies>(TrustedProxies.Section), .. Of<HttpsSettings>(HttpsSettings.Section), .. Of<FeedLimits>(FeedLimits.Section), .. Of<MailOptions>(MailOptions.Section),
        ];

        Assert.All(Ours, service => Assert.Empty(service.Value.Environment.Keys.Except(known)));
        Assert.All(Ours, service => Assert.Contains("Database__Password_FILE", service.Value.Environment.Keys));

        static IEnumerable<string> Of<T>(string section) => typeof(T).GetProperties().Where(property => property.CanWrite).Select(property => $"{section}__{property.Name}");
    }

    [Fact]
    public void Every_command_is_one_of_the_program()
    {
        var usage = File.ReadAllText(Path.Combine(Root, "src", "ClubCycle.Web", "Program.cs"));

        Assert.All(Ours, service => Assert.Contains($"[\"{service.Value.Command[0]}\", ..", usage, StringComparison.Ordinal));
        Assert.Equal(["CMD", "dotnet", "/app/ClubCycle.Web.dll", "health"], Services["app"].Healthcheck!.Test);
    }

    [Fact]
    public void No_service_may_write_to_its_image_or_gain_rights_or_take_all_memory() => Assert.All(Services, service =>
    {
        Assert.True(service.Value.ReadOnly);
        Assert.Equal(["ALL"], service.Value.CapDrop);
        Assert.Equal(["no-new-privileges:true"], service.Value.SecurityOpt);
        Assert.Matches("^[0-9]+[mg]$", service.Value.MemLimit);
    });

    [Fact]
    public void Only_the_database_has_rights_of_root_and_only_the_app_a_way_out()
    {
        Assert.Equal(["database"], Services.Where(s => s.Value.CapAdd.Count > 0).Select(s => s.Key));
        Assert.Equal(["app"], Services.Where(s => s.Value.Networks.Contains("outside")).Select(s => s.Key));
        Assert.StartsWith("127.0.0.1:", Assert.Single(Services.SelectMany(s => s.Value.Ports)), StringComparison.Ordinal);
    }

    /// <summary>ASVS 13.2.2.</summary>
    [Fact]
    public void Only_what_makes_and_restores_tables_signs_in_as_their_owner()
    {
        Assert.Equal(["migrate", "restore"], Ours.Where(s => s.Value.Environment.ContainsKey("ConnectionStrings__ClubCycleOwner")).Select(s => s.Key).Order());
        Assert.Equal(["migrate", "restore"], Ours.Where(s => s.Value.Secrets.Contains("clubcycle_password")).Select(s => s.Key).Order());
        Assert.All(Ours, service => Assert.EndsWith(service.Key == "backup" ? "Username=clubcycle_backup" : "Username=clubcycle_app", service.Value.Environment["ConnectionStrings__ClubCycle"], StringComparison.Ordinal));
    }

    [Fact]
    public void Backups_have_their_own_password_only_and_whoever_migrates_or_restores_lets_their_role_read()
    {
        Assert.Equal(["clubcycle_backup_password"], Services["backup"].Secrets);
        Assert.Equal(["backup"], Ours.Where(s => s.Value.Secrets.Contains("clubcycle_backup_password")).Select(s => s.Key));
        Assert.Equal(["migrate", "restore"], Ours.Where(s => s.Value.Environment.GetValueOrDefault("Database__BackupRole") is "clubcycle_backup").Select(s => s.Key).Order());
    }

    [Fact]
    public void No_password_stands_in_a_setting() =>
        Assert.All(Services.SelectMany(s => s.Value.Environment), setting => Assert.True(!setting.Key.Contains("PASSWORD", StringComparison.OrdinalIgnoreCase) || setting.Value.StartsWith("/run/secrets/", StringComparison.Ordinal), setting.Key));

    [Fact]
    public void Every_secret_that_is_read_is_given_and_made_by_the_script()
    {
        var made = File.ReadAllText(Path.Combine(Root, "deploy", "make-secrets.sh"));

        Assert.All(Services, service => Assert.Empty(service.Value.Environment.Values.Where(value => value.StartsWith("/run/secrets/", StringComparison.Ordinal)).Select(value => value["/run/secrets/".Length..]).Except(service.Value.Secrets)));
        Assert.All(Services.SelectMany(s => s.Value.Secrets), secret => Assert.Contains(secret, made, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_build_target_is_a_stage_of_the_Dockerfile()
    {
        var stages = Stage().Matches(File.ReadAllText(Path.Combine(Root, "deploy", "Dockerfile"))).Select(m => m.Groups[1].Value).ToList();

        Assert.Equal(["app", "backup"], Services.Values.Select(s => s.Build?.Target).OfType<string>().Distinct().Order());
        Assert.Empty(Services.Values.Select(s => s.Build?.Target).OfType<string>().Except(stages));
    }

    [Fact]
    public void The_app_starts_after_the_schema_is_up_to_date() => Assert.Equal("service_completed_successfully", Services["app"].DependsOn["migrate"].Condition);

    private static IEnumerable<KeyValuePair<string, Service>> Ours => Services.Where(service => service.Key != "database");

    private static Dictionary<string, Service> Read()
    {
        using var file = File.OpenText(Path.Combine(Root, "docker-compose.yml"));
        var merged = new MergingParser(new Parser(file));
        return new DeserializerBuilder().WithNamingConvention(YamlDotNet.Serialization.NamingConventions.UnderscoredNamingConvention.Instance).IgnoreUnmatchedProperties().Build().Deserialize<Compose>(merged).Services;
    }

    private static string RootOf(string folder) =>
        File.Exists(Path.Combine(folder, "ClubCycle.sln")) ? folder : RootOf(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not run below ClubCycle.sln"));

    [GeneratedRegex("^FROM .* AS (.+)$", RegexOptions.Multiline)]
    private static partial Regex Stage();

    private sealed class Compose
    {
        public Dictionary<string, Service> Services { get; set; } = [];
    }

    private sealed class Service
    {
        public Dictionary<string, string> Environment { get; set; } = [];
        public List<string> Command { get; set; } = [];
        public List<string> CapDrop { get; set; } = [];
        public List<string> CapAdd { get; set; } = [];
        public List<string> SecurityOpt { get; set; } = [];
        public List<string> Networks { get; set; } = [];
        public List<string> Ports { get; set; } = [];
        public List<string> Secrets { get; set; } = [];
        public bool ReadOnly { get; set; }
        public string MemLimit { get; set; } = "";
        public Building? Build { get; set; }
        public Checking? Healthcheck { get; set; }
        public Dictionary<string, Dependence> DependsOn { get; set; } = [];
    }

    private sealed class Building
    {
        public string? Target { get; set; }
    }

    private sealed class Checking
    {
        public List<string> Test { get; set; } = [];
    }

    private sealed class Dependence
    {
        public string Condition { get; set; } = "";
    }
}
