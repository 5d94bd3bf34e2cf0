using System.Reflection;
using ClubCycle.Planning.Measures;
using NodaTime;

namespace ClubCycle.Planning.Tests.Measures;

/// <summary>What no formula takes, whatever else it is given.</summary>
public sealed class BadNumbersTests
{
    private static readonly MethodInfo[] Formulas =
    [
        .. typeof(Estimate).Assembly.GetExportedTypes()
            .Where(type => type.Namespace == typeof(Estimate).Namespace)
            .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static))
            .Where(method => method.ReturnType.IsGenericType && method.ReturnType.GetGenericTypeDefinition() == typeof(Result<>)),
    ];

    /// <summary>Something every formula with several inputs takes, by the input's name.</summary>
    private static readonly Dictionary<string, object> Ordinary = new()
    {
        ["acclimatised"] = true,
        ["aerobicSpeed"] = 4.0,
        ["age"] = 12.0,
        ["air"] = 25.0,
        ["beats"] = 150.0,
        ["change"] = 1.0,
        ["earlier"] = 150.0,
        ["earlierDay"] = new LocalDate(2026, 1, 1),
        ["endSpeed"] = 17.0,
        ["flashToThunder"] = 20.0,
        ["globe"] = 35.0,
        ["grade"] = 0.01,
        ["height"] = 150.0,
        ["jumpHeight"] = 40.0,
        ["later"] = 151.0,
        ["laterDay"] = new LocalDate(2026, 3, 1),
        ["load"] = 60.0,
        ["mass"] = 50.0,
        ["maximum"] = 200.0,
        ["measured"] = 200.0,
        ["metres"] = 1440.0,
        ["offset"] = 0.0,
        ["percent"] = 50.0,
        ["plateStep"] = 2.5,
        ["rate"] = 0.5,
        ["repetitions"] = 5.0,
        ["rest"] = 60.0,
        ["seconds"] = 300.0,
        ["sex"] = Sex.Male,
        ["sittingHeight"] = 78.0,
        ["smallestWorthwhile"] = 1.0,
        ["speed"] = 90.0,
        ["stage"] = 8.0,
        ["supervised"] = true,
        ["thunderHeard"] = true,
        ["ageAtPeak"] = 12.0,
        ["trulyRunning"] = true,
        ["typicalError"] = 1.0,
        ["uptake"] = 40.0,
        ["wbgt"] = 25.0,
        ["wetBulb"] = 20.0,
    };

    public static TheoryData<string> EveryFormulaOfSeveralInputs() => [.. Formulas.Where(formula => formula.GetParameters().Length > 1).Select(NameOf)];

    public static TheoryData<string, string, double> EveryNumberOfEveryFormula() => Inputs<double>(double.NaN, double.PositiveInfinity, double.NegativeInfinity, -1e12, 1e12);

    public static TheoryData<string, string, int> EveryCountOfEveryFormula() => Inputs(int.MinValue, -1, 0, int.MaxValue);

    [Theory]
    [MemberData(nameof(EveryNumberOfEveryFormula))]
    public void No_formula_takes_a_number_that_cannot_be(string formula, string input, double bad) => AssertRefused(formula, input, bad);

    [Theory]
    [MemberData(nameof(EveryCountOfEveryFormula))]
    public void No_formula_takes_a_count_or_completed_age_that_cannot_be(string formula, string input, int bad) => AssertRefused(formula, input, bad);

    /// <summary>So that the refusals above are for the one bad number.</summary>
    [Theory]
    [MemberData(nameof(EveryFormulaOfSeveralInputs))]
    public void Every_formula_takes_ordinary_numbers(string formula) => Assert.Empty(Problems(formula, "", 0));

    [Fact]
    public void All_formulas_are_looked_at() => Assert.InRange(Formulas.Length, 60, 100);

    private static void AssertRefused(string formula, string input, object bad)
    {
        var problem = Assert.Single(Problems(formula, input, bad));

        Assert.Matches(@"^measure\.[a-z0-9-]+$", problem.Code);
        Assert.Matches(@"^.+ must be .+\. \S.+\.$", problem.Message);
    }

    private static IReadOnlyList<Problem> Problems(string formula, string input, object bad)
    {
        var method = Formulas.Single(method => NameOf(method) == formula);
        var result = method.Invoke(null, [.. method.GetParameters().Select(p => p.Name == input ? bad : Convert(Ordinary[p.Name!], p.ParameterType))])!;
        return (IReadOnlyList<Problem>?)result.GetType().GetProperty("Problems")?.GetValue(result) ?? [];
    }

    private static TheoryData<string, string, T> Inputs<T>(params T[] bad) =>
    [
        .. from formula in Formulas
           from input in formula.GetParameters()
           where (Nullable.GetUnderlyingType(input.ParameterType) ?? input.ParameterType) == typeof(T)
           from value in bad
           select new TheoryDataRow<string, string, T>(NameOf(formula), input.Name!, value),
    ];

    private static string NameOf(MethodInfo method) => $"{method.DeclaringType!.Name}.{method.Name}";

    private static object Convert(object value, Type type) =>
        value is double number && (Nullable.GetUnderlyingType(type) ?? type) == typeof(int) ? (int)number : value;
}
