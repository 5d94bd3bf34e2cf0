using System.Diagnostics.CodeAnalysis;

namespace ClubCycle.Planning;

/// <summary>A value, or the problems that stopped us. Bugs and broken infrastructure throw instead.</summary>
public abstract record Result<T>
{
    private Result()
    {
    }

    public static implicit operator Result<T>(T value) => new Ok(value);

    public static implicit operator Result<T>(Problem problem) => new Failed([problem]);

    /// <summary>The value, for inputs that were checked before (stored rows, test builders).</summary>
    /// <exception cref="InvalidOperationException">There are problems; the message lists them.</exception>
    public T OrThrow() => this switch
    {
        Ok ok => ok.Value,
        Failed failed => throw new InvalidOperationException(string.Join("; ", failed.Problems.Select(p => $"{p.Code} at '{p.At}': {p.Message}"))),
        _ => throw new InvalidOperationException($"Unknown result {GetType()}"),
    };

    /// <summary>True with the value, or false with at least one problem.</summary>
    public bool TryGet([MaybeNullWhen(false)] out T value, out IReadOnlyList<Problem> problems)
    {
        var ok = this as Ok;
        value = ok is null ? default : ok.Value;
        problems = this is Failed failed ? failed.Problems : [];
        return ok is not null;
    }

    public sealed record Ok(T Value) : Result<T>;

    /// <summary>At least one problem.</summary>
    public sealed record Failed(IReadOnlyList<Problem> Problems) : Result<T>
    {
        public Problem First => Problems[0];
    }
}
