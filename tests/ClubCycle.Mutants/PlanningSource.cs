using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace ClubCycle.Mutants;

/// <summary>The planning assembly, compiled in memory.</summary>
internal sealed class PlanningSource
{
    private readonly CSharpCompilation _compilation;
    private readonly ResourceDescription[] _resources;

    public PlanningSource(Places places)
    {
        var options = CSharpParseOptions.Default.WithLanguageVersion(LanguageVersion.CSharp14);
        Files =
        [
            .. Directory.EnumerateFiles(places.Planning, "*.cs", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
                .Select(file => CSharpSyntaxTree.ParseText(File.ReadAllText(file), options, Path.GetRelativePath(places.Planning, file).Replace('\\', '/'))),
        ];
        var generated = Directory.EnumerateFiles(places.Generated, "*.cs", SearchOption.AllDirectories).Select(file => CSharpSyntaxTree.ParseText(File.ReadAllText(file), options, file));
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Append(Path.Combine(places.Tests, "NodaTime.dll"));
        _compilation = CSharpCompilation.Create(
            "ClubCycle.Planning",
            Files.Concat(generated),
            references.Select(path => MetadataReference.CreateFromFile(path)),
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable));
        _resources =
        [
            .. Directory.EnumerateFiles(Path.Combine(places.Planning, "Workouts", "Library"), "*.json")
                .Select(file => new ResourceDescription($"Workouts/Library/{Path.GetFileName(file)}", () => File.OpenRead(file), isPublic: true)),
        ];
    }

    public IReadOnlyList<SyntaxTree> Files { get; }

    public byte[] Original() =>
        Compiled(_compilation, out var errors) ?? throw new InvalidOperationException($"The planning does not compile as it is: {string.Join("\n", errors)}");

    /// <summary>Null for a change that does not compile.</summary>
    public byte[]? With(Mutant mutant) => Compiled(_compilation.ReplaceSyntaxTree(mutant.Tree, mutant.Mutated), out _);

    private byte[]? Compiled(CSharpCompilation compilation, out IEnumerable<Diagnostic> errors)
    {
        using var assembly = new MemoryStream();
        var made = compilation.Emit(assembly, manifestResources: _resources);
        errors = made.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error);
        return made.Success ? assembly.ToArray() : null;
    }
}
