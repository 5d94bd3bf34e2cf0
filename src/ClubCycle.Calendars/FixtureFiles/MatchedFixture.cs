namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>What one match of a file means for those stored.</summary>
public abstract record MatchedFixture
{
    private MatchedFixture(ReadFixture read) => Read = read;

    public ReadFixture Read { get; }

    /// <summary>No stored match is meant.</summary>
    public sealed record New(ReadFixture Read) : MatchedFixture(Read);

    /// <summary>Stored already.</summary>
    /// <param name="Known">With the file's source key, which may be newly learnt.</param>
    public sealed record Same(ReadFixture Read, KnownFixture Known) : MatchedFixture(Read);

    /// <summary>Stored with another date, start, opponent or place.</summary>
    public sealed record Changed(ReadFixture Read, KnownFixture From, KnownFixture To) : MatchedFixture(Read);

    /// <summary>The file says that it does not take place.</summary>
    /// <param name="Known">Null when it was not stored anyway.</param>
    public sealed record Cancelled(ReadFixture Read, KnownFixture? Known) : MatchedFixture(Read);
}
