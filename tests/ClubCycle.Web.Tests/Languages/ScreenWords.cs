using System.Net;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace ClubCycle.Web.Tests.Languages;

/// <summary>The words that stand in the source of the screens: those that are said in the reader's language, and those that are not.</summary>
internal static partial class ScreenWords
{
    /// <summary>Says its problems in English, by a Say of its own.</summary>
    private const string CommandLine = "Commands/";

    /// <summary>What is read by people who run the program or by other programs stays English; what is kept or told as a problem is said where it is shown.</summary>
    private static readonly string[] NotScreens =
    [
        CommandLine, "Api/", "Hosting/", "Languages/", "Shell/Theme.cs", "Features/Feeds/FeedAnswers.cs", "Features/Feeds/FeedLimits.cs", "Features/Feeds/FeedRendering.cs", "Features/Notices/MailOptions.cs",
        "Features/Print/PrintFont.cs", "Account/BrowserName.cs", "Account/ForbiddenPasswords.cs", "Account/SetupForm.cs", "Account/AccountEndpoints.cs",
    ];

    /// <summary>Texts that are kept as data and said where they are shown.</summary>
    private const string Sketches = "Features/Exercises/Sketches.";

    /// <summary>Parameters and attributes that hold no words.</summary>
    private static readonly HashSet<string> Wordless =
    [
        "class", "Class", "id", "Id", "for", "name", "href", "src", "type", "style", "d", "viewBox", "points", "transform", "rel", "role", "method", "action", "autocomplete", "inputmode", "pattern", "target",
        "fill", "stroke", "lang", "font-family", "media", "content", "http-equiv", "charset", "Match", "Policy", "Key", "Current", "preserveAspectRatio", "aria-labelledby", "aria-describedby", "aria-controls", "accept",
        "stroke-linecap", "stroke-linejoin", "as", "Script", "Icon", "Layout", "patternUnits", "text-anchor", "dominant-baseline", "value", "enctype", "headers", "scope", "aria-live", "rendermode", "data-when",
    ];

    private static readonly Lazy<IReadOnlyList<SourceFile>> All = new(() => [.. Read()]);

    private static readonly Lazy<IReadOnlyList<string>> Problems = new(() => [.. ReadProblems().Distinct()]);

    public static IReadOnlyList<SourceFile> Files => All.Value;

    /// <summary>The key of each text that is said, with the place where it stands.</summary>
    public static IEnumerable<(string Key, string Where)> Said => Files.SelectMany(file => file.Root.DescendantNodes().OfType<InvocationExpressionSyntax>().Where(IsSay).SelectMany(say => Texts(say).Select(text => (KeyOf(text), file.Name))));

    /// <summary>What is given to Say and is no text as it stands in the source.</summary>
    public static IEnumerable<string> Unreadable => Files.Where(file => !file.Name.StartsWith(CommandLine, StringComparison.Ordinal)).SelectMany(file => file.Root.DescendantNodes().OfType<InvocationExpressionSyntax>().Where(IsSay)
        .Where(say => !Texts(say).Any() || say.Ancestors().OfType<FieldDeclarationSyntax>().Any(f => f.Modifiers.Any(SyntaxKind.StaticKeyword)))
        .Select(say => $"{file.Name}: {say}"));

    /// <summary>Words that every reader gets in English.</summary>
    public static IEnumerable<string> HardCoded => Files.Where(file => !IsSketch(file) && !NotScreens.Any(folder => file.Name.StartsWith(folder, StringComparison.Ordinal))).SelectMany(file => file.Root.DescendantNodes().SelectMany(WordsOf).Select(words => $"{file.Name}: {words}")).Distinct();

    /// <summary>The words of drill sketches.</summary>
    public static IEnumerable<string> OfSketches => Files.Where(IsSketch).SelectMany(file => file.Root.DescendantNodes().OfType<LiteralExpressionSyntax>())
        .Where(literal => literal.IsKind(SyntaxKind.StringLiteralExpression) && TwoLetters().IsMatch(literal.Token.ValueText) && literal.Token.ValueText.Contains(' ', StringComparison.Ordinal)).Select(literal => literal.Token.ValueText).Distinct();

    /// <summary>The texts of problems, wherever they are found.</summary>
    public static IEnumerable<string> OfProblems => Problems.Value;

    /// <summary>What the readers of files say about rows and entries: all their whole sentences.</summary>
    public static IEnumerable<string> OfFiles => SourceOf("ClubCycle.Calendars").SelectMany(file => file.Root.DescendantNodes().OfType<ExpressionSyntax>())
        .Where(text => text is InterpolatedStringExpressionSyntax || text.IsKind(SyntaxKind.StringLiteralExpression))
        .Where(text => !text.Ancestors().Any(around => around is ThrowExpressionSyntax or ThrowStatementSyntax or InterpolationSyntax))
        .Select(text => KeyOf(text).Trim()).Where(text => text.EndsWith('.') && text.Contains(' ', StringComparison.Ordinal)).Distinct();

    /// <summary>A text with numbered places for its values, as the translations have it.</summary>
    public static string KeyOf(ExpressionSyntax text)
    {
        var place = 0;
        return text switch
        {
            LiteralExpressionSyntax literal => literal.Token.ValueText,
            InterpolatedStringExpressionSyntax sentence => string.Concat(sentence.Contents.Select(part => part is InterpolatedStringTextSyntax words ? words.TextToken.ValueText.Replace("{{", "{", StringComparison.Ordinal).Replace("}}", "}", StringComparison.Ordinal) : $"{{{place++}}}")),
            _ => throw new ArgumentException("No text", nameof(text)),
        };
    }

    private static bool IsSketch(SourceFile file) => file.Name.StartsWith(Sketches, StringComparison.Ordinal);

    private static bool IsSay(InvocationExpressionSyntax call) => call.Expression is IdentifierNameSyntax { Identifier.Text: "Say" } or MemberAccessExpressionSyntax { Name.Identifier.Text: "Say", Expression: IdentifierNameSyntax { Identifier.Text: "Texts" } };

    /// <summary>One text, or those that a choice is made from.</summary>
    private static IEnumerable<ExpressionSyntax> Texts(InvocationExpressionSyntax say) => say.ArgumentList.Arguments is [{ Expression: var only }] ? Texts(only) : [];

    private static IEnumerable<ExpressionSyntax> Texts(ExpressionSyntax expression) => expression switch
    {
        LiteralExpressionSyntax literal when literal.IsKind(SyntaxKind.StringLiteralExpression) => [literal],
        InterpolatedStringExpressionSyntax sentence => [sentence],
        ParenthesizedExpressionSyntax inner => Texts(inner.Expression),
        ConditionalExpressionSyntax choice when Texts(choice.WhenTrue).Any() && Texts(choice.WhenFalse).Any() => [.. Texts(choice.WhenTrue), .. Texts(choice.WhenFalse)],
        SwitchExpressionSyntax choice when choice.Arms.All(arm => arm.Expression is ThrowExpressionSyntax || Texts(arm.Expression).Any()) => choice.Arms.SelectMany(arm => Texts(arm.Expression)),
        _ => [],
    };

    private static IEnumerable<string> WordsOf(SyntaxNode node) => node switch
    {
        InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.Text: "AddMarkupContent" } } call => MarkupWords(Literal(call, 1)),
        InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.Text: "AddContent" } } call => Words(Literal(call, 1), l => true),
        LiteralExpressionSyntax literal when literal.IsKind(SyntaxKind.StringLiteralExpression) && !IsElsewhere(literal) => Words(literal.Token.ValueText, LooksLikeWords),
        InterpolatedStringExpressionSyntax sentence when !IsElsewhere(sentence) => Words(string.Concat(sentence.Contents.OfType<InterpolatedStringTextSyntax>().Select(t => t.TextToken.ValueText + "\u0001")), LooksLikeWords),
        _ => [],
    };

    /// <summary>The program is called the same everywhere.</summary>
    private static bool HasWords(string text) => TwoLetters().IsMatch(text.Replace("ClubCycle", "", StringComparison.Ordinal));

    private static IEnumerable<string> Words(string? text, Func<string, bool> counts) => text is not null && HasWords(text) && counts(text) ? [text.Trim()] : [];

    private static IEnumerable<string> MarkupWords(string? markup)
    {
        if (markup is null)
        {
            yield break;
        }

        foreach (Match attribute in SpokenAttribute().Matches(markup))
        {
            yield return attribute.Groups[1].Value;
        }

        foreach (var text in WebUtility.HtmlDecode(Tag().Replace(markup, "\u0001")).Split('\u0001').Where(HasWords))
        {
            yield return text.Trim();
        }
    }

    /// <summary>Several words, or one that begins as a sentence does; not an address, a style or a code.</summary>
    private static bool LooksLikeWords(string text) =>
        !text.Contains('/', StringComparison.Ordinal) && !text.Contains('=', StringComparison.Ordinal) && !text.Contains("--", StringComparison.Ordinal) && (Sentence().IsMatch(text) || OneWord().IsMatch(text.Trim('\u0001', ' ')));

    /// <summary>Said, thrown, logged, compared with, a name of something, a problem (which is said where it is shown), or counted among the markup.</summary>
    private static bool IsElsewhere(ExpressionSyntax text) => text.Ancestors().TakeWhile(around => around is not MemberDeclarationSyntax || around is FieldDeclarationSyntax).Any(around => around switch
    {
        AttributeSyntax or ThrowExpressionSyntax or ThrowStatementSyntax or CaseSwitchLabelSyntax or ConstantPatternSyntax or BracketedArgumentListSyntax => true,
        ObjectCreationExpressionSyntax made => made.Type.ToString() is "Problem" or "Regex",
        ImplicitObjectCreationExpressionSyntax made => IsProblem(made.ArgumentList),
        InvocationExpressionSyntax call => IsElsewhere(call, text) || IsProblem(call.ArgumentList),
        AssignmentExpressionSyntax assigned => assigned.Left.ToString().Contains("Header", StringComparison.Ordinal) || assigned.Left.ToString().EndsWith("CacheControl", StringComparison.Ordinal),
        BinaryExpressionSyntax binary => binary.IsKind(SyntaxKind.EqualsExpression) || binary.IsKind(SyntaxKind.NotEqualsExpression),
        _ => false,
    });

    /// <summary>Problems are told by their code.</summary>
    private static bool IsProblem(ArgumentListSyntax given) => given.Arguments is [{ Expression: LiteralExpressionSyntax code }, ..] && Code().IsMatch(code.Token.ValueText);

    private static bool IsElsewhere(InvocationExpressionSyntax call, ExpressionSyntax text) => Name(call) switch
    {
        "Say" or "AddMarkupContent" or "AddContent" or "nameof" or "OpenElement" => true,
        "AddAttribute" or "AddComponentParameter" => call.ArgumentList.Arguments[1] is { Expression: var name } && (name.Contains(text) || Wordless.Contains(AttributeName(name))),
        "ToString" or "ParseExact" or "TryParseExact" or "StartsWith" or "EndsWith" or "Contains" or "IndexOf" or "Replace" or "Split" or "TrimStart" or "CreateWithInvariantCulture" or "Format" => true,
        "InvokeAsync" or "InvokeVoidAsync" or "MapGet" or "MapPost" or "FindFirst" or "GetSection" or "GetRequiredSection" or "PushAsync" or "Append" or "Page" => true,
        var other => other.StartsWith("Log", StringComparison.Ordinal),
    };

    private static string Name(InvocationExpressionSyntax call) => call.Expression switch
    {
        IdentifierNameSyntax name => name.Identifier.Text,
        MemberAccessExpressionSyntax member => member.Name.Identifier.Text,
        _ => "",
    };

    private static string AttributeName(ExpressionSyntax name) => name switch
    {
        LiteralExpressionSyntax literal => literal.Token.ValueText,
        InvocationExpressionSyntax { ArgumentList.Arguments: [{ Expression: MemberAccessExpressionSyntax member }] } => member.Name.Identifier.Text,
        _ => "",
    };

    private static string? Literal(InvocationExpressionSyntax call, int argument) =>
        call.ArgumentList.Arguments.ElementAtOrDefault(argument)?.Expression is LiteralExpressionSyntax literal && literal.IsKind(SyntaxKind.StringLiteralExpression) ? literal.Token.ValueText : null;

    /// <summary>Texts that are given to a problem in its making; those that are put together elsewhere are not among them.</summary>
    private static IEnumerable<string> ReadProblems() => Files.Where(file => !file.Name.StartsWith(CommandLine, StringComparison.Ordinal)).Concat(SourceOf("ClubCycle.Planning")).Concat(SourceOf("ClubCycle.Data").Where(file => !file.Name.StartsWith("Embedded/", StringComparison.Ordinal) && !file.Name.StartsWith("Backups/", StringComparison.Ordinal))).Concat(SourceOf("ClubCycle.Calendars"))
        .SelectMany(file => file.Root.DescendantNodes().OfType<ArgumentListSyntax>().Where(IsProblem).Where(given => given.Arguments.Count > 1))
        .SelectMany(given => Texts(given.Arguments[1].Expression)).Select(KeyOf).Where(text => text.Contains(' ', StringComparison.Ordinal));

    private static IEnumerable<SourceFile> SourceOf(string project)
    {
        var folder = Path.GetFullPath(Path.Combine(Here(), "..", "..", "..", "src", project));
        return Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Select(path => new SourceFile(Path.GetRelativePath(folder, path), CSharpSyntaxTree.ParseText(File.ReadAllText(path)).GetRoot()));
    }

    private static IEnumerable<SourceFile> Read()
    {
        var web = Path.GetFullPath(Path.Combine(Here(), "..", "..", "..", "src", "ClubCycle.Web"));
        var generated = Directory.GetDirectories(Path.Combine(Here(), "..", "..", "..", "artifacts", "obj", "ClubCycle.Web", Configuration, "generated", "Microsoft.CodeAnalysis.Razor.Compiler"))[0];
        foreach (var path in Directory.EnumerateFiles(web, "*.cs", SearchOption.AllDirectories))
        {
            yield return new SourceFile(Path.GetRelativePath(web, path), Parse(path));
        }

        foreach (var path in Directory.EnumerateFiles(web, "*.razor", SearchOption.AllDirectories).Where(path => Path.GetFileName(path) != "_Imports.razor"))
        {
            var name = Path.GetRelativePath(web, path);
            yield return new SourceFile(name, Parse(Path.Combine(generated, Path.ChangeExtension(name, null) + "_razor.g.cs")));
        }

        SyntaxNode Parse(string path) => CSharpSyntaxTree.ParseText(File.ReadAllText(path)).GetRoot();
    }

    private static string Configuration => Path.GetFileName(AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar));

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;

    [GeneratedRegex("\\p{L}{2}")]
    private static partial Regex TwoLetters();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("(?:aria-label|title|placeholder|alt)=\"([^\"]*\\p{L}{2}[^\"]*)\"")]
    private static partial Regex SpokenAttribute();

    [GeneratedRegex("\\p{L}{2,}[,:;.]? \\p{L}|\\p{L}{2,}[,:;.]? \u0001|\u0001,? \\p{L}{2}")]
    private static partial Regex Sentence();

    [GeneratedRegex("^\\p{Lu}\\p{Ll}+[.:…]?$")]
    private static partial Regex OneWord();

    [GeneratedRegex("^[a-z]+(-[a-z]+)*\\.[a-z-]+$")]
    private static partial Regex Code();

    public sealed record SourceFile(string Name, SyntaxNode Root);
}
