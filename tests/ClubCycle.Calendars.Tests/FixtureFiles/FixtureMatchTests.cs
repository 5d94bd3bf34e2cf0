using ClubCycle.Calendars.FixtureFiles;
using ClubCycle.Planning;
using CsCheck;
using NodaTime;

namespace ClubCycle.Calendars.Tests.FixtureFiles;

public sealed class FixtureMatchTests
{
    private static readonly LocalDate Day = new(2026, 9, 12);
    private static readonly LocalTime Half2 = new(14, 30);

    private static readonly Gen<ReadFixture> AnyRead = Gen.Select(
        Gen.Int[0, 200], Gen.Int[0, 3], Gen.Int[0, 5], Gen.Int[0, 9], Gen.Int[0, 2],
        (day, start, opponent, cancelled, place) => new ReadFixture(
            1, Day.PlusDays(day), start == 0 ? null : new LocalTime(12 + start, 0), opponent == 0 ? null : $"Club {opponent}", Place: place == 0 ? null : $"Pitch {place}", Cancelled: cancelled == 0));

    private static readonly Gen<IReadOnlyList<ReadFixture>> AnyFile = Gen.Select(AnyRead.List[0, 25], Gen.Bool, (reads, keyed) =>
        (IReadOnlyList<ReadFixture>)[.. reads.Select((read, line) => read with { Line = line + 1, SourceKey = keyed ? $"uid{line}" : null })]);

    [Fact]
    public void Importing_twice_changes_nothing() => Gen.Select(AnyFile, AnyFile).Sample((first, second) =>
    {
        var stored = Import(Import([], first), second);

        var again = FixtureMatch.Against(stored, second);

        return again.Read.All(match => match is MatchedFixture.Same or MatchedFixture.Cancelled);
    });

    [Fact]
    public void Importing_the_same_file_twice_leaves_no_match_out_of_it() => AnyFile.Sample(file =>
        FixtureMatch.Against(Import([], file), file).NotInFile.Count == 0);

    [Fact]
    public void A_stored_match_is_paired_once_or_not_in_the_file() => Gen.Select(AnyFile, AnyFile).Sample((first, second) =>
    {
        var stored = Import([], first);

        var match = FixtureMatch.Against(stored, second);

        var named = match.Read.Select(Paired).OfType<Guid>().Concat(match.NotInFile.Select(known => known.Id)).ToList();
        return named.Count == stored.Count && named.ToHashSet().SetEquals(stored.Select(known => known.Id));
    });

    [Fact]
    public void With_keys_any_moved_date_is_a_change_and_not_an_addition() => Gen.Select(AnyRead.List[1, 25], Gen.Int[1, 300]).Sample((reads, days) =>
    {
        var file = reads.Select((read, line) => read with { SourceKey = $"uid{line}", Cancelled = false }).ToList();

        var match = FixtureMatch.Against(Import([], file), [.. file.Select(read => read with { Date = read.Date.PlusDays(days) })]);

        return match.NotInFile.Count == 0 && match.Read.All(one => one is MatchedFixture.Changed changed && changed.To.Date == changed.From.Date.PlusDays(days));
    });

    [Fact]
    public void Without_keys_a_date_moved_by_up_to_60_days_is_a_change_and_not_an_addition() => Gen.Int[-60, 60].List[1, 25].Sample(moves =>
    {
        var file = moves.Select((_, line) => new ReadFixture(line + 1, Day.PlusWeeks(line), Half2, $"Club {line}")).ToList();

        var match = FixtureMatch.Against(Import([], file), [.. file.Select((read, line) => read with { Date = read.Date.PlusDays(moves[line]) })]);

        return match.NotInFile.Count == 0 && match.Read.Index().All(one => moves[one.Index] == 0
            ? one.Item is MatchedFixture.Same
            : one.Item is MatchedFixture.Changed changed && changed.From.Opponent == changed.To.Opponent);
    });

    [Fact]
    public void A_key_goes_before_the_opponent()
    {
        var match = FixtureMatch.Against(
            [Known(1, Day, "Delta", key: "a"), Known(2, Day.PlusDays(7), "Delta", key: "b")],
            [new ReadFixture(1, Day, Opponent: "Delta", SourceKey: "b")]);

        Assert.Equal(2, Assert.IsType<MatchedFixture.Changed>(match.Read.Single()).From.Id.ToByteArray()[0]);
        Assert.Equal(1, match.NotInFile.Single().Id.ToByteArray()[0]);
    }

    [Fact]
    public void Home_and_away_against_one_opponent_are_told_apart_by_the_nearest_date()
    {
        var match = FixtureMatch.Against(
            [Known(1, Day, "Delta"), Known(2, Day.PlusDays(40), "Delta")],
            [new ReadFixture(1, Day.PlusDays(42), Opponent: "DELTA "), new ReadFixture(2, Day.PlusDays(1), Opponent: "Delta")]);

        Assert.Equal([2, 1], match.Read.Cast<MatchedFixture.Changed>().Select(one => (int)one.From.Id.ToByteArray()[0]));
    }

    [Theory]
    [InlineData("Delta")]
    [InlineData(null)]
    public void Two_matches_on_one_day_are_told_apart_by_their_start(string? opponent)
    {
        var early = Known(1, Day, opponent) with { Start = new LocalTime(10, 0) };
        var late = Known(2, Day, opponent) with { Start = new LocalTime(16, 0) };

        var match = FixtureMatch.Against([early, late], [new ReadFixture(1, Day, late.Start, opponent), new ReadFixture(2, Day, early.Start, opponent)]);

        Assert.Equal([late, early], match.Read.Cast<MatchedFixture.Same>().Select(one => one.Known));
    }

    [Fact]
    public void Two_matches_on_one_day_of_which_the_file_says_little_stay_as_they_are()
    {
        var north = Known(1, Day, "Delta") with { Start = Half2, Place = "North pitch" };
        var south = Known(2, Day, "Delta") with { Start = Half2, Place = "South pitch" };

        var match = FixtureMatch.Against([north, south], [new ReadFixture(1, Day, Half2, "Delta"), new ReadFixture(2, Day, Opponent: "Delta", Place: "North pitch")]);

        Assert.Equal([south, north], match.Read.Cast<MatchedFixture.Same>().Select(one => one.Known));
    }

    [Theory]
    [InlineData(60, true)]
    [InlineData(61, false)]
    public void A_move_of_more_than_60_days_is_another_match(int days, bool moved) =>
        Assert.Equal(moved, FixtureMatch.Against([Known(1, Day, "Delta")], [new ReadFixture(1, Day.PlusDays(days), Opponent: "Delta")]).Read.Single() is MatchedFixture.Changed);

    [Fact]
    public void Names_meet_whatever_their_case_and_accents_are_made_of() =>
        Assert.Equal(Day.PlusDays(3), Assert.IsType<MatchedFixture.Changed>(FixtureMatch.Against([Known(1, Day, "ATLE\u0301TICO")], [new ReadFixture(1, Day.PlusDays(3), Opponent: "Atl\u00E9tico")]).Read.Single()).To.Date);

    [Fact]
    public void On_the_same_date_a_new_opponent_is_a_change()
    {
        var changed = Assert.IsType<MatchedFixture.Changed>(FixtureMatch.Against([Known(1, Day, "to be drawn")], [new ReadFixture(1, Day, Opponent: "Delta")]).Read.Single());

        Assert.Equal(("to be drawn", "Delta"), (changed.From.Opponent, changed.To.Opponent));
    }

    [Fact]
    public void What_the_file_does_not_say_stays()
    {
        var known = Known(1, Day, "Delta") with { Start = Half2 };

        Assert.Equal(new MatchedFixture.Same(new ReadFixture(1, Day), known), FixtureMatch.Against([known], [new ReadFixture(1, Day)]).Read.Single());
    }

    [Fact]
    public void A_match_that_moves_to_another_ground_is_changed_and_one_without_a_word_of_it_stays_there()
    {
        var known = Known(1, Day, "Delta") with { Place = "North pitch" };

        Assert.Equal("South pitch", Assert.IsType<MatchedFixture.Changed>(FixtureMatch.Against([known], [new ReadFixture(1, Day, Opponent: "Delta", Place: "South pitch")]).Read.Single()).To.Place);
        Assert.Equal("North pitch", Assert.IsType<MatchedFixture.Same>(FixtureMatch.Against([known], [new ReadFixture(1, Day, Opponent: "Delta")]).Read.Single()).Known.Place);
    }

    [Fact]
    public void A_key_that_is_learnt_later_comes_with_the_same_match() =>
        Assert.Equal("a", Assert.IsType<MatchedFixture.Same>(FixtureMatch.Against([Known(1, Day, "Delta")], [new ReadFixture(1, Day, Opponent: "Delta", SourceKey: "a")]).Read.Single()).Known.SourceKey);

    [Fact]
    public void A_cancelled_match_names_the_stored_one_and_takes_no_other_with_it()
    {
        var match = FixtureMatch.Against(
            [Known(1, Day, "Delta"), Known(2, Day.PlusDays(7), "Echo")],
            [new ReadFixture(1, Day, Opponent: "Delta", Cancelled: true), new ReadFixture(2, Day.PlusDays(7), Opponent: "Foxtrot", Cancelled: true)]);

        Assert.Equal([Id(1), null], match.Read.Cast<MatchedFixture.Cancelled>().Select(one => one.Known?.Id));
        Assert.Equal([Id(2)], match.NotInFile.Select(known => (Guid?)known.Id));
    }

    private static List<KnownFixture> Import(List<KnownFixture> stored, IReadOnlyList<ReadFixture> file)
    {
        var after = stored.ToDictionary(known => known.Id);
        foreach (var match in FixtureMatch.Against(stored, file).Read)
        {
            var known = match switch
            {
                MatchedFixture.New(var read) => new KnownFixture(NamedId.From("new", $"{after.Count}"), read.Date, read.Start, read.Opponent, read.SourceKey, read.Place),
                MatchedFixture.Same same => same.Known,
                MatchedFixture.Changed changed => changed.To,
                _ => null,
            };
            if (known is not null)
            {
                after[known.Id] = known;
            }
        }

        return [.. after.Values];
    }

    private static Guid? Paired(MatchedFixture match) => match switch
    {
        MatchedFixture.Same same => same.Known.Id,
        MatchedFixture.Changed changed => changed.From.Id,
        MatchedFixture.Cancelled cancelled => cancelled.Known?.Id,
        _ => null,
    };

    private static Guid? Id(byte number) => new Guid(number, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);

    private static KnownFixture Known(byte number, LocalDate date, string? opponent = null, string? key = null) => new(Id(number)!.Value, date, null, opponent, key);
}
