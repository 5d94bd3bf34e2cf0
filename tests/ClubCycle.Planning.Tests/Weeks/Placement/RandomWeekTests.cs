using ClubCycle.Planning.Weeks.Placement;
using CsCheck;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>Random weeks against the rules' words. A failure prints the seed that repeats it.</summary>
public class RandomWeekTests
{
    [Fact]
    public void No_placed_week_breaks_a_hard_rule() =>
        RandomWeek.Of(6, 8).Sample(
            week =>
            {
                List<Happening> all = [.. RandomWeek.ContactsOf(week), .. CyclePlacement.Place([week]).Weeks[0].Placed.Select(p => RandomWeek.Of(week, p))];

                Assert.Null(RandomWeek.CheckOf(week).Broken(all, [.. all, .. RandomWeek.AroundOf(week)]));
            },
            iter: 3000, print: RandomWeek.Print);

    [Fact]
    public void Every_wanted_session_is_placed_or_dropped_with_a_reason_and_pins_stand_where_they_were_put() =>
        RandomWeek.Of(6, 6).Sample(
            week =>
            {
                var result = CyclePlacement.Place([week]).Weeks[0];

                Assert.Equal(week.Wanted.Select(w => w.Slot).Order(), result.Placed.Select(p => p.Wanted.Slot).Concat(result.Dropped.Select(d => d.Wanted.Slot)).Order());
                Assert.All(result.Dropped, d => Assert.False(string.IsNullOrWhiteSpace(d.Why)));
                Assert.All(week.Wanted.Where(w => w.Pinned), pin => Assert.Contains(result.Placed, p => p.Wanted == pin && p.Date == pin.KeepDate && p.Start == pin.KeepStart));
            },
            iter: 1000, print: RandomWeek.Print);

    [Fact]
    public void A_week_that_repeats_keeps_its_own_spacing_across_its_end() =>
        RandomWeek.Of(5, 10).Select(w => w with { Around = [], Contacts = [.. w.Contacts.Where(c => !c.IsMatch).Concat(w.Contacts.Where(c => c.IsMatch).Take(1))], Wanted = [.. w.Wanted.Select(s => s with { Pinned = false })] }).Sample(
            week =>
            {
                List<Happening> all = [.. RandomWeek.ContactsOf(week), .. CyclePlacement.PlaceRepeating(week).Weeks[0].Placed.Select(p => RandomWeek.Of(week, p))];
                var copies = new[] { -7, 7 }.SelectMany(days => all.Select(h => new Happening(h.Minute + (days * 1440), h.Length, h.Match, h.Workout, h.Inside)));

                Assert.Null(RandomWeek.CheckOf(week).Broken(all, [.. all, .. copies]));
            },
            iter: 1000, print: RandomWeek.Print);
}
