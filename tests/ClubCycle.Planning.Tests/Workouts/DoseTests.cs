using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Workouts;

/// <summary>The numbers on the sheets, held against published tables.</summary>
public sealed class DoseTests
{
    /// <summary>Haff and Triplett (eds) 2016, Essentials of Strength Training and Conditioning, 4th ed., ch. 17; rows 70, 67 and 65 % from memory.</summary>
    [Theory]
    [InlineData(100, 1)]
    [InlineData(95, 2)]
    [InlineData(93, 3)]
    [InlineData(90, 4)]
    [InlineData(87, 5)]
    [InlineData(85, 6)]
    [InlineData(83, 7)]
    [InlineData(80, 8)]
    [InlineData(77, 9)]
    [InlineData(75, 10)]
    [InlineData(70, 11)]
    [InlineData(67, 12)]
    [InlineData(65, 15)]
    public void The_repetition_table_is_the_published_one(int percent, int reps) => Assert.Equal(reps, RepetitionTable.MostReps(percent));

    [Theory]
    [InlineData(86, 5)]
    [InlineData(66, 12)]
    [InlineData(40, 15)]
    public void Between_two_rows_the_heavier_one_decides(int percent, int reps) => Assert.Equal(reps, RepetitionTable.MostReps(percent));

    /// <summary>Level ceilings of the Australian Strength and Conditioning Association, from memory; the youngest of a squad decides (editorial).</summary>
    [Theory]
    [InlineData(8, 0)]
    [InlineData(10, 0)]
    [InlineData(11, 60)]
    [InlineData(13, 60)]
    [InlineData(14, 70)]
    [InlineData(16, 70)]
    [InlineData(17, 80)]
    [InlineData(18, 80)]
    public void Minors_lift_no_more_than_their_age_allows(int under, int percent) => Assert.Equal(percent, RepetitionTable.Ceiling(AgeGroup.Youth(under)));

    [Fact]
    public void No_load_asks_for_more_repetitions_than_the_table_or_more_weight_than_the_age_allows()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All())
        {
            foreach (var step in sheet.Steps.Where(step => step.PercentOfMaximum is not null))
            {
                SheetGrid.Holds(step.Reps <= RepetitionTable.MostReps(step.PercentOfMaximum!.Value), workout, context, step);
                SheetGrid.Holds(step.PercentOfMaximum <= RepetitionTable.Ceiling(context.AgeGroup), workout, context, step);
            }
        }
    }

    /// <summary>Muscular endurance: at most 67 %, 12 repetitions or more, 2–3 sets, at most 30 s of rest (Haff and Triplett 2016, ch. 17).</summary>
    [Fact]
    public void Circuits_stay_in_the_window_of_muscular_endurance()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All("strength-circuit", "core-and-circuit").Where(sample => sample.Context.Minutes >= 30))
        {
            Assert.All(MainPart(sheet), step =>
            {
                SheetGrid.Holds(step.Reps >= 12, workout, context, step);
                Assert.InRange(step.Sets!.Value, 2, 3);
                SheetGrid.Holds(step.PercentOfMaximum is null or <= 67, workout, context, step);
                SheetGrid.Holds(step.RestSeconds <= (Uses(step, ExerciseUse.Explosive) ? 60 : 30), workout, context, step);
            });
        }
    }

    /// <summary>Strength: at most 6 repetitions with 2–5 min of rest (same table). New under-18s lift lighter and longer (Lloyd et al. 2014).</summary>
    [Fact]
    public void Heavy_lifting_means_few_repetitions_and_long_rests()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All("heavy-lift", "lift-and-jump").Where(sample => sample.Context.Minutes >= 30))
        {
            var beginners = context.AgeGroup.IsYouth && context.TrainingAge is TrainingAge.New;
            Assert.All(MainPart(sheet).Where(step => step.PercentOfMaximum is not null), step =>
            {
                Assert.InRange(step.Reps!.Value, beginners ? 8 : 4, beginners ? 12 : 6);
                SheetGrid.Holds(step.Sets == 1 || step.RestSeconds is >= 120 and <= 300, workout, context, step);
            });
        }
    }

    [Fact]
    public void Minors_who_are_new_to_lifting_stay_at_or_under_sixty_percent()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All().Where(sample => sample.Context is { AgeGroup.IsYouth: true, TrainingAge: TrainingAge.New }))
        {
            Assert.All(sheet.Steps, step => SheetGrid.Holds(step.PercentOfMaximum is null or <= 60, workout, context, step));
        }
    }

    [Fact]
    public void Only_workouts_marked_as_heavy_put_eighty_percent_or_more_on_the_legs()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All().Where(sample => !sample.Workout.HeavyLift))
        {
            Assert.All(sheet.Steps.Where(step => Find(step).LowerBody), step => SheetGrid.Holds(step.PercentOfMaximum < 80, workout, context, step));
        }
    }

    [Fact]
    public void Trained_seniors_alternate_lifts_with_fast_sets_of_twelve_to_fifteen()
    {
        foreach (var name in new[] { "heavy-lift", "strength-circuit" })
        {
            var first = MainPart(SessionSheets.For(WorkoutCatalogue.Find(name)!, Senior with { Minutes = 60, TrainingAge = TrainingAge.Trained }))[0];
            Assert.Contains(ExerciseUse.Explosive, Find(first).Uses);
            Assert.InRange(first.Reps!.Value, 12, 15);
            Assert.Null(first.PercentOfMaximum);
        }
    }

    /// <summary>Potach and Chu in Haff and Triplett 2016, ch. 18: up to 100, 120 and 140 contacts by experience. Under 15 at most 100 (Johnson et al. 2011).</summary>
    [Fact]
    public void Foot_contacts_stay_within_experience_and_are_halved_beside_lifting()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All("jumps", "low-jumps", "lift-and-jump"))
        {
            var most = (context.AgeGroup.YoungestAge < 15, context.TrainingAge) switch
            {
                (true, _) or (_, TrainingAge.New) => 100,
                (_, TrainingAge.Some) => 120,
                _ => 140,
            };
            Assert.InRange(sheet.Steps.Sum(step => step.FootContacts ?? 0), 1, workout.HeavyLift ? most / 2 : most);
            Assert.All(sheet.Steps.Where(step => step.FootContacts is not null), step => Assert.Equal(step.Sets * step.Reps * Find(step).ContactsPerRep, step.FootContacts));
        }
    }

    /// <summary>Same chapter: 80 contacts or more make a full session from the first loading week on.</summary>
    [Theory]
    [InlineData(TrainingAge.New, 80, 100)]
    [InlineData(TrainingAge.Some, 100, 120)]
    [InlineData(TrainingAge.Trained, 120, 140)]
    public void Seniors_move_inside_their_band_of_foot_contacts(TrainingAge trainingAge, int fewest, int most)
    {
        foreach (var week in Enumerable.Range(1, 10))
        {
            Assert.InRange(Contacts("jumps", Senior with { TrainingAge = trainingAge, WeekInPhase = week, Minutes = 60 }), fewest - 4, most);
        }
    }

    [Fact]
    public void Children_start_at_sixty_contacts_at_most_and_rise_by_a_tenth_a_week_at_most()
    {
        foreach (var group in AgeGroup.All.Where(group => group.YoungestAge is >= 9 and < 15))
        {
            var context = Senior with { AgeGroup = group, Minutes = 60, WeekInPhase = 1 };
            var before = Contacts("low-jumps", context);
            Assert.InRange(before, 50, 60);
            for (var week = 2; week <= 16; week++)
            {
                var unloading = week % 3 == 0;
                var now = Contacts("low-jumps", context with { WeekInPhase = week, Turn = week, Loading = unloading ? WeekLoading.Unloading : WeekLoading.Loading });
                Assert.InRange(now, 1, Math.Min(100, (int)(1.1 * before)));
                before = unloading ? before : now;
            }
        }
    }

    [Fact]
    public void Weeks_without_jumps_are_no_reason_for_children_to_jump_more()
    {
        var first = Senior with { AgeGroup = AgeGroup.Youth(12), Minutes = 60, WeekInPhase = 1, Turn = 0 };

        Assert.InRange(Contacts("low-jumps", first with { WeekInPhase = 5, Turn = 1 }), 50, (int)(1.1 * Contacts("low-jumps", first)));
    }

    [Fact]
    public void Jumps_are_low_under_fifteen_and_for_masters_and_never_high_or_shock()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All())
        {
            var most = context.AgeGroup.YoungestAge < 15 || context.AgeGroup.IsMasters ? JumpClass.Low : JumpClass.Medium;
            Assert.All(sheet.Steps, step => SheetGrid.Holds(Find(step).Jumps <= (JumpClass)Math.Min((int)most, (int)workout.Jumps), workout, context));
        }
    }

    /// <summary>Haugen et al. 2019, table 2: acceleration up to 300 m, maximal velocity up to 150 m a session; half under 16 years (editorial).</summary>
    [Fact]
    public void Sprints_stay_under_their_metres_and_rest_two_minutes_and_twelve_times_the_work()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All("sprint-intervals", "hill-sprints"))
        {
            var half = context.AgeGroup.YoungestAge < 16 ? 2 : 1;
            SheetGrid.Holds(Metres(sheet) <= 300 / half, workout, context);
            SheetGrid.Holds(MainPart(sheet).Where(step => Uses(step, ExerciseUse.FlyingSprint)).Sum(step => step.Reps * step.Metres) <= 150 / half, workout, context);

            // 4 m/s is slow even uphill, so the work is never longer than this.
            Assert.All(MainPart(sheet), step => SheetGrid.Holds(step.RestSeconds >= Math.Max(120, 12 * step.Metres!.Value / 4), workout, context, step));
        }
    }

    /// <summary>
    /// Haff and Triplett 2016, table 3.6: all-out work of 5 to 10 s takes 12 to 20 times as long a rest, printed as 60–100 s after 5 s and 120–200 s after 10 s.
    /// Agility bouts of 5 s keep inside the band; sprints, at 5 m/s or faster, have the rest of the longest such work or more.
    /// </summary>
    [Theory]
    [InlineData("reactive-agility", 60, 100)]
    [InlineData("sprint-intervals", 120, 240)]
    [InlineData("hill-sprints", 120, 240)]
    public void All_out_work_rests_as_the_published_ratios_ask(string workout, int least, int most)
    {
        foreach (var (name, context, sheet) in SheetGrid.All(workout))
        {
            Assert.All(MainPart(sheet).Where(step => step.RestSeconds is not null), step =>
            {
                SheetGrid.Holds(step.RestSeconds >= least && step.RestSeconds <= most, name, context, step);
                SheetGrid.Holds(step.RestSeconds >= 12 * (step.Seconds ?? step.Metres!.Value / 5), name, context, step);
            });
        }
    }

    /// <summary>Sheppard and Young 2006: agility answers a stimulus. At least half of the minutes, in practice three quarters here.</summary>
    [Fact]
    public void Most_agility_minutes_answer_an_unpredictable_cue_in_short_bouts()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All("reactive-agility"))
        {
            var main = MainPart(sheet);
            SheetGrid.Holds(2 * main.Where(step => Find(step).Cued).Sum(step => step.Minutes) >= main.Sum(step => step.Minutes), workout, context);
            Assert.All(main.Where(step => step.Seconds is not null), step => Assert.True(step.Seconds <= 6 && step.RestSeconds >= 12 * step.Seconds, step.ToString()));
        }
    }

    [Fact]
    public void Easy_runs_of_minors_last_twenty_five_minutes_at_most()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All("easy-run", "core-and-easy-run", "strides").Where(sample => sample.Context.AgeGroup.IsYouth))
        {
            SheetGrid.Holds(MainPart(sheet).Where(step => step.Metres is null).Sum(step => step.Minutes) <= 25, workout, context);
        }
    }

    /// <summary>140 b/min is a fair shorthand for 12 to 37 years only: there it is at most 77 % of 208 − 0.7 × age (Tanaka et al. 2001).</summary>
    [Fact]
    public void A_heart_rate_is_named_only_between_twelve_and_thirty_seven_and_never_before_the_talk_test()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All("easy-run", "core-and-easy-run"))
        {
            var run = Assert.Single(MainPart(sheet));
            Assert.Contains("talk", run.Note, StringComparison.Ordinal);
            var named = context.AgeGroup is { YoungestAge: >= 12, IsMasters: false };
            SheetGrid.Holds(named == run.Note.Contains("140", StringComparison.Ordinal), workout, context);
            Assert.True(!named || run.Note.IndexOf("talk", StringComparison.Ordinal) < run.Note.IndexOf("140", StringComparison.Ordinal));
            Assert.True(!named || context.AgeGroup.IsYouth || run.Note.Contains("up to 37 years", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Volume_rises_through_a_phase()
    {
        foreach (var name in Counted)
        {
            var early = Volume(name, Senior with { WeekInPhase = 1 });
            var late = Volume(name, Senior with { WeekInPhase = 7 });
            Assert.True(late > early, $"{name}: {early} then {late}");
        }
    }

    [Fact]
    public void Lighter_weeks_take_volume_away_and_keep_load_distance_and_rest()
    {
        foreach (var name in Counted)
        {
            foreach (var trainingAge in Enum.GetValues<TrainingAge>())
            {
                foreach (var week in Enumerable.Range(1, 12))
                {
                    var context = Senior with { TrainingAge = trainingAge, WeekInPhase = week };
                    foreach (var loading in new[] { WeekLoading.Unloading, WeekLoading.Taper })
                    {
                        var lighter = context with { Loading = loading };
                        Assert.True(Volume(name, lighter) < Volume(name, context), $"{name}, {lighter}: {Volume(name, context)} then {Volume(name, lighter)}");
                        Assert.Equal(Hardest(name, context), Hardest(name, lighter));
                    }
                }
            }
        }
    }

    private static readonly string[] Counted =
        ["strength-circuit", "core-and-circuit", "heavy-lift", "jumps", "lift-and-jump", "low-jumps", "sprint-intervals", "hill-sprints", "reactive-agility", "body-weight", "technique-lifting"];

    private static DoseContext Senior => new(AgeGroup.Senior, TrainingAge.Some, PhaseKind.PreSeason, 2, WeekLoading.Loading, 60, 0);

    private static Step[] MainPart(SessionSheet sheet) => [.. sheet.Steps.Where(step => step.Part == "main")];

    private static Exercise Find(Step step) => ExerciseLibrary.Find(step.Name)!;

    private static bool Uses(Step step, ExerciseUse use) => Find(step).Uses.Contains(use);

    private static int Metres(SessionSheet sheet) => MainPart(sheet).Sum(step => (step.Reps * step.Metres) ?? 0);

    private static int Contacts(string workout, DoseContext context) =>
        SessionSheets.For(WorkoutCatalogue.Find(workout)!, context).Steps.Sum(step => step.FootContacts ?? 0);

    private static int Volume(string workout, DoseContext context) =>
        MainPart(SessionSheets.For(WorkoutCatalogue.Find(workout)!, context)).Sum(step => (step.Sets ?? 1) * (step.Reps ?? 0) * (step.Metres ?? 1));

    private static int? Hardest(string workout, DoseContext context) =>
        MainPart(SessionSheets.For(WorkoutCatalogue.Find(workout)!, context)).Max(step => step.PercentOfMaximum);
}
