using System.Text.RegularExpressions;
using System.Xml.Linq;
using ClubCycle.Data;
using ClubCycle.Web.Account;
using ClubCycle.Web.Hosting;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>docs/security.md against the program (ASVS 11.1.1, 14.1.1, 14.1.2, 15.1.1, 16.1.1 and 16.2.3).</summary>
public sealed partial class SecurityPageTests(TestApp app) : IClassFixture<TestApp>
{
    private static readonly string[] Classes = ["open", "club", "personal", "a child's", "secret"];

    /// <summary>Those of the table of columns, in its order.</summary>
    private static readonly string[] Stored = Classes[1..];

    private static readonly string Root = RootOf(AppContext.BaseDirectory);
    private static readonly string Page = File.ReadAllText(Path.Combine(Root, "docs", "security.md"));

    private static readonly IReadOnlyList<(string Path, string Text)> Source =
    [
        .. Directory.EnumerateFiles(Path.Combine(Root, "src"), "*.*", SearchOption.AllDirectories)
            .Where(file => Path.GetExtension(file) is ".cs" or ".razor" && !file.Contains($"{Path.DirectorySeparatorChar}Migrations{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Select(file => (file, File.ReadAllText(file))),
    ];

    [Fact]
    public void Every_key_has_its_place_strength_life_and_reader() => Assert.All(Table("key or secret"), key => Assert.DoesNotContain("", key));

    [Fact]
    public void Every_setting_that_holds_a_secret_is_among_the_keys() =>
        Assert.Empty(SecretFiles.Names.Append(KeyFile.Setting.Replace(":", "__", StringComparison.Ordinal)).Except(CodeIn(Table("key or secret"))));

    [Fact]
    public void Every_secret_that_is_made_for_containers_is_among_the_keys()
    {
        var made = Regex.Match(File.ReadAllText(Path.Combine(Root, "deploy", "make-secrets.sh")), "for name in (.*); do").Groups[1].Value.Split(' ');

        Assert.True(made.Length > 1);
        Assert.Empty(made.Except(CodeIn(Table("key or secret"))));
    }

    [Fact]
    public void Every_column_that_holds_a_secret_is_among_the_keys()
    {
        var secret = Table("table").SelectMany(row => Columns(row[4]).Select(column => $"{CodeIn([row])[0]}.{column}")).ToList();

        Assert.NotEmpty(secret);
        Assert.Empty(secret.Except(CodeIn(Table("key or secret"))));
    }

    [Fact]
    public void Every_place_in_the_source_that_makes_or_checks_a_secret_is_among_the_keys() =>
        Assert.Empty(Source.Where(file => Secrets().IsMatch(file.Text)).Select(file => Path.GetFileNameWithoutExtension(file.Path)).Except(CodeIn(Table("key or secret"))));

    [Fact]
    public void Data_has_five_classes_and_each_says_where_it_may_be_who_sees_it_and_how_long() => Assert.All(Table("class"), row => Assert.DoesNotContain("", row));

    [Fact]
    public void The_classes_are_those_of_the_columns_and_the_rules()
    {
        Assert.Equal(Classes, Table("class").Select(row => row[0]));
        Assert.Equal(Stored.Order(StringComparer.Ordinal), Table("rule").SelectMany(row => row[1].Split(", ")).Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Every_column_of_the_database_has_one_class()
    {
        await using var db = await app.Services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(TestContext.Current.CancellationToken);
        var stored = db.Model.GetRelationalModel().Tables
            .SelectMany(table => table.Columns.Select(column => column.Name).Where(name => name is not ("id" or "version") && !name.EndsWith("_id", StringComparison.Ordinal)).DefaultIfEmpty("").Select(name => $"{table.Schema}.{table.Name} {name}"));
        var named = Table("table").SelectMany(row => row[1..].SelectMany(Columns).DefaultIfEmpty("").Select(column => $"{CodeIn([row])[0]} {column}"));

        Assert.Equal(stored.Order(StringComparer.Ordinal), named.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("hash|stamp$|secret|xml", 4)]
    [InlineData("birth|health|growing|guardian_|answer", 3)]
    [InlineData("email|phone|user_name|display_name|_by$", 2)]
    public void A_column_that_is_called_like_this_is_of_that_class_or_a_higher_one(string called, int least)
    {
        var lower = Table("table").SelectMany(row => row[1..least].SelectMany(Columns).Where(column => Regex.IsMatch(column, called)).Select(column => $"{row[0]} {column}"));

        // Both say something of the club and nothing of a person.
        Assert.Empty(lower.Except(["`accounts.users` concurrency_stamp", "`club.clubs` guardian_age"]));
    }

    [Fact]
    public void Every_test_that_is_named_exists()
    {
        var methods = Directory.EnumerateFiles(Path.Combine(Root, "tests"), "*Tests.cs", SearchOption.AllDirectories)
            .SelectMany(file => TestMethod().Matches(File.ReadAllText(file)).Select(m => $"{Path.GetFileNameWithoutExtension(file)}.{m.Groups[1].Value}")).ToHashSet();
        var named = TestName().Matches(Page).Select(m => m.Groups[1].Value).ToList();

        Assert.True(named.Count > 15);
        Assert.DoesNotContain(named, test => !methods.Contains(test));
    }

    [Fact]
    public void Every_log_says_what_is_in_it_where_it_is_who_reads_it_and_how_long() => Assert.All(Table("log"), log => Assert.DoesNotContain("", log));

    [Fact]
    public void Every_part_of_the_program_that_logs_is_on_the_page_and_no_other()
    {
        var logs = Source.SelectMany(file => Logger().Matches(file.Text).Select(m => m.Groups[1].Value))
            .Concat(Source.Where(file => HandsLoggingOn().IsMatch(file.Text)).Select(file => Path.GetFileNameWithoutExtension(file.Path))).Distinct();

        Assert.Equal(logs.Order(StringComparer.Ordinal), CodeIn(Table("source")).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Everything_that_the_audit_trail_notes_is_on_the_page_and_nothing_else() =>
        Assert.Equal(Notes().Distinct().Order(StringComparer.Ordinal), CodeIn(Table("about")).Order(StringComparer.Ordinal));

    [Fact]
    public void The_program_logs_to_the_console_and_nowhere_else() =>
        Assert.IsType<ConsoleLoggerProvider>(Assert.Single(app.Services.GetServices<ILoggerProvider>()));

    [Fact]
    public void Nothing_in_the_source_logs_past_it() =>
        Assert.Empty(Source.Where(file => OtherLogs().IsMatch(file.Text)).Select(file => Path.GetFileName(file.Path)).Except(["QuietConsole.cs"]));

    /// <summary>As NuGet grades a hole (docs on NuGetAuditLevel, from memory).</summary>
    [Theory]
    [InlineData("low")]
    [InlineData("moderate")]
    [InlineData("high")]
    [InlineData("critical")]
    public void Each_severity_of_a_hole_in_a_library_has_its_days(string severity)
    {
        var row = Assert.Single(Table("the hole"), row => row[1].Split(", ").Contains(severity));

        Assert.InRange(int.Parse(row[2], System.Globalization.CultureInfo.InvariantCulture), 1, 90);
    }

    /// <summary>ASVS 15.2.1.</summary>
    [Fact]
    public void A_known_hole_in_any_library_stops_a_build()
    {
        var build = XDocument.Load(Path.Combine(Root, "Directory.Build.props")).Descendants("PropertyGroup").Elements().ToLookup(e => e.Name.LocalName, e => e.Value);

        Assert.Equal(["true"], build["NuGetAudit"]);
        Assert.Equal(["all"], build["NuGetAuditMode"]);
        Assert.Equal(["low"], build["NuGetAuditLevel"]);
        Assert.Equal(["true"], build["TreatWarningsAsErrors"]);
    }

    /// <summary>ASVS 15.2.1.</summary>
    [Fact]
    public void No_project_lets_a_hole_pass()
    {
        var files = new[] { "*.csproj", "*.props", "*.targets" }.SelectMany(kind => Directory.EnumerateFiles(Root, kind, SearchOption.AllDirectories))
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}artifacts{Path.DirectorySeparatorChar}", StringComparison.Ordinal)).ToList();

        Assert.True(files.Count > 10);
        Assert.Empty(files.Where(file => LetsPass().IsMatch(File.ReadAllText(file)) && Path.GetRelativePath(Root, file) != "Directory.Build.props").Select(Path.GetFileName));
        Assert.DoesNotMatch("NuGetAuditSuppress|NU19|WarningsNotAsErrors", File.ReadAllText(Path.Combine(Root, "Directory.Build.props")));
    }

    /// <summary>The rows of the table whose first column is headed so, cell by cell.</summary>
    private static List<string[]> Table(string firstHeading)
    {
        var lines = Page[Page.IndexOf($"\n| {firstHeading} |", StringComparison.Ordinal)..].TrimStart('\n').Split('\n').TakeWhile(line => line.StartsWith('|')).Skip(2);
        var rows = lines.Select(line => line.Trim('|').Split('|').Select(cell => cell.Trim()).ToArray()).ToList();
        Assert.NotEmpty(rows);
        return rows;
    }

    private static List<string> CodeIn(IEnumerable<string[]> rows) => [.. rows.SelectMany(row => row).SelectMany(cell => Code().Matches(cell)).Select(m => m.Groups[1].Value)];

    private static IEnumerable<string> Columns(string cell) => Code().Matches(cell).SelectMany(m => m.Groups[1].Value.Split(", "));

    /// <summary>What is given for the <c>what</c> of a note, straight or by a method of the same file that passes it on, and the constants of files that note.</summary>
    private static IEnumerable<string> Notes() =>
        from file in Source
        where Noting().IsMatch(file.Text)
        let root = CSharpSyntaxTree.ParseText(file.Text).GetRoot()
        let taking = root.DescendantNodes().OfType<MethodDeclarationSyntax>().Where(m => m.ParameterList.Parameters.Any(p => p.Identifier.Text == "what")).Select(m => m.Identifier.Text).Concat(["Note", "NoteAsync", "NoteRefusalAsync"]).ToHashSet()
        from text in root.DescendantNodes().OfType<LiteralExpressionSyntax>()
        where Note().IsMatch(text.Token.ValueText)
        where (text.Ancestors().OfType<InvocationExpressionSyntax>().FirstOrDefault() is { } call && taking.Contains(NameOf(call)))
            || text.Ancestors().OfType<FieldDeclarationSyntax>().Any(field => field.Modifiers.Any(SyntaxKind.ConstKeyword))
        select text.Token.ValueText;

    private static string NameOf(InvocationExpressionSyntax call) => call.Expression is MemberAccessExpressionSyntax member ? member.Name.Identifier.Text : call.Expression.ToString();

    private static string RootOf(string folder) =>
        File.Exists(Path.Combine(folder, "ClubCycle.sln")) ? folder : RootOf(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not run below ClubCycle.sln"));

    [GeneratedRegex("`([^`]+)`")]
    private static partial Regex Code();

    [GeneratedRegex(@"`(\w+Tests\.\w+)`")]
    private static partial Regex TestName();

    [GeneratedRegex(@"\[(?:Fact|Theory)[^\n]*\n(?:\s*\[[^\n]*\n|\s*//[^\n]*\n)*\s*public (?:async )?\w+(?:<\w+>)? (\w+)\(")]
    private static partial Regex TestMethod();

    [GeneratedRegex(@"\b(RandomNumberGenerator|SHA(256|384|512)|HMAC\w+|AesGcm|AesCcm|Aes|RSA|ECDsa|HKDF|Rfc2898DeriveBytes|IDataProtectionProvider|IDataProtector|AddDataProtection|PasswordHasherOptions|IPasswordHasher|PasswordHasher|AuthenticatorTokenProvider)\b[.<( ;>]")]
    private static partial Regex Secrets();

    [GeneratedRegex(@"\bILogger<(\w+)>")]
    private static partial Regex Logger();

    [GeneratedRegex(@"\bILoggerFactory \w+[,)]|ILogger<\w+<")]
    private static partial Regex HandsLoggingOn();

    [GeneratedRegex(@"\bNote(Async|RefusalAsync)?\(|insert into club\.audit")]
    private static partial Regex Noting();

    [GeneratedRegex("^[a-z]+(-[a-z]+)*\\.[a-z]+(-[a-z]+)*$")]
    private static partial Regex Note();

    [GeneratedRegex(@"\b(AddProvider|AddDebug|AddEventLog|AddEventSourceLogger|AddSystemdConsole|AddJsonConsole|AddConsole|EventLog|Syslog|Trace\.(Write|TraceE)|Debug\.Write|Console\.(Error|Out)\.Write|Console\.Write)|Logging\.AddOpenTelemetry")]
    private static partial Regex OtherLogs();

    [GeneratedRegex("NuGetAudit|NU19|WarningsNotAsErrors|TreatWarningsAsErrors|<NoWarn>")]
    private static partial Regex LetsPass();
}
