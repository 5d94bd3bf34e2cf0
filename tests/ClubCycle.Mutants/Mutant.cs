using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace ClubCycle.Mutants;

/// <summary>One small change to one file.</summary>
internal sealed record Mutant(SyntaxTree Tree, TextSpan Span, string Text)
{
    private static readonly Dictionary<SyntaxKind, string[]> Operators = new()
    {
        [SyntaxKind.LessThanToken] = ["<=", ">="],
        [SyntaxKind.LessThanEqualsToken] = ["<", ">"],
        [SyntaxKind.GreaterThanToken] = [">=", "<="],
        [SyntaxKind.GreaterThanEqualsToken] = [">", "<"],
        [SyntaxKind.EqualsEqualsToken] = ["!="],
        [SyntaxKind.ExclamationEqualsToken] = ["=="],
        [SyntaxKind.AmpersandAmpersandToken] = ["||"],
        [SyntaxKind.BarBarToken] = ["&&"],
        [SyntaxKind.PlusToken] = ["-"],
        [SyntaxKind.MinusToken] = ["+"],
        [SyntaxKind.AsteriskToken] = ["/"],
        [SyntaxKind.SlashToken] = ["*"],
        [SyntaxKind.PlusEqualsToken] = ["-="],
        [SyntaxKind.MinusEqualsToken] = ["+="],
        [SyntaxKind.PlusPlusToken] = ["--"],
        [SyntaxKind.MinusMinusToken] = ["++"],
        [SyntaxKind.AndKeyword] = ["or"],
        [SyntaxKind.OrKeyword] = ["and"],
    };

    private static readonly Dictionary<string, string> Calls = new[]
    {
        ("Any", "All"), ("Min", "Max"), ("First", "Last"), ("FirstOrDefault", "LastOrDefault"), ("Take", "Skip"), ("TakeWhile", "SkipWhile"), ("MinBy", "MaxBy"),
        ("OrderBy", "OrderByDescending"), ("ThenBy", "ThenByDescending"), ("Ceiling", "Floor"),
    }.SelectMany(pair => new[] { pair, (pair.Item2, pair.Item1) }).ToDictionary(pair => pair.Item1, pair => pair.Item2, StringComparer.Ordinal);

    public SyntaxTree Mutated => Tree.WithChangedText(Tree.GetText().WithChanges(new TextChange(Span, Text)));

    /// <summary>Not the default of a parameter: callers in the built tests carry it with them.</summary>
    public static IEnumerable<Mutant> Of(SyntaxTree tree) =>
        from node in tree.GetRoot().DescendantNodes(node => node is not (AttributeListSyntax or ThrowStatementSyntax or ThrowExpressionSyntax or EqualsValueClauseSyntax { Parent: ParameterSyntax }))
        from change in Changes(node)
        select new Mutant(tree, change.Span, change.Text);

    public override string ToString()
    {
        var line = Tree.GetText().Lines.GetLineFromPosition(Span.Start);
        var before = Tree.GetText().ToString(Span).ReplaceLineEndings(" ");
        return $"{Tree.FilePath}:{line.LineNumber + 1}: `{before}` becomes `{Text.ReplaceLineEndings(" ")}` in: {line.ToString().Trim()}";
    }

    private static IEnumerable<(TextSpan Span, string Text)> Changes(SyntaxNode node) => node switch
    {
        PostfixUnaryExpressionSyntax { Parent: ForStatementSyntax } => [],
        PostfixUnaryExpressionSyntax unary => Swapped(unary.OperatorToken),
        PrefixUnaryExpressionSyntax unary when unary.IsKind(SyntaxKind.LogicalNotExpression) => [(unary.OperatorToken.Span, "")],
        PrefixUnaryExpressionSyntax unary => Swapped(unary.OperatorToken),
        BinaryExpressionSyntax binary => Swapped(binary.OperatorToken),
        AssignmentExpressionSyntax assignment => Swapped(assignment.OperatorToken),
        BinaryPatternSyntax pattern => Swapped(pattern.OperatorToken),
        RelationalPatternSyntax pattern => Swapped(pattern.OperatorToken),
        LiteralExpressionSyntax { Token.Value: int } literal => [(literal.Span, $"({literal.Token.Text} + 1)"), (literal.Span, $"({literal.Token.Text} - 1)")],
        LiteralExpressionSyntax { Token.Value: double and not 0 } literal => [(literal.Span, $"({literal.Token.Text} * 1.5)"), (literal.Span, $"({literal.Token.Text} * 0.5)")],
        LiteralExpressionSyntax { Token.Value: bool value } literal => [(literal.Span, value ? "false" : "true")],
        IsPatternExpressionSyntax test => [(test.Span, $"!({test})")],
        ConditionalExpressionSyntax choice => [(choice.Condition.Span, $"!({choice.Condition})")],
        IfStatementSyntax { Condition: var condition } => [(condition.Span, $"!({condition})")],
        WhereClauseSyntax { Condition: var condition } => [(condition.Span, $"!({condition})"), (condition.Span, "true")],
        MemberAccessExpressionSyntax { Name: IdentifierNameSyntax name } when Calls.TryGetValue(name.Identifier.Text, out var other) => [(name.Span, other)],
        ReturnStatementSyntax { Expression: null } or ContinueStatementSyntax or BreakStatementSyntax { Parent: BlockSyntax } => [(node.Span, ";")],
        ExpressionStatementSyntax { Expression: InvocationExpressionSyntax } => [(node.Span, ";")],
        _ => [],
    };

    private static IEnumerable<(TextSpan Span, string Text)> Swapped(SyntaxToken token) =>
        Operators.TryGetValue(token.Kind(), out var others) ? others.Select(other => (token.Span, other)) : [];
}
