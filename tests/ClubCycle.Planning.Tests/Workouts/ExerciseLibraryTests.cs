using System.Text.RegularExpressions;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Workouts;

/// <summary>What the library holds.</summary>
public sealed partial class ExerciseLibraryTests
{
    [Fact]
    public void The_library_is_large_enough_to_vary() => Assert.True(ExerciseLibrary.All.Count >= 200, $"{ExerciseLibrary.All.Count} entries");

    [Theory]
    [InlineData(Quality.AerobicEndurance, 12)]
    [InlineData(Quality.Speed, 50)]
    [InlineData(Quality.Agility, 35)]
    [InlineData(Quality.CoreStrength, 20)]
    [InlineData(Quality.MuscularEndurance, 35)]
    public void Each_quality_has_many_exercises(Quality quality, int fewest) =>
        AtLeast(fewest, exercise => exercise.Qualities.Contains(quality));

    [Theory]
    [InlineData("warm-up", 30)]
    [InlineData("main", 140)]
    [InlineData("core", 20)]
    [InlineData("cool-down", 10)]
    public void Each_part_of_a_session_has_many_exercises(string part, int fewest) => AtLeast(fewest, exercise => exercise.Part == part);

    [Theory]
    [InlineData(12, ExerciseUse.AgilityCued)]
    [InlineData(4, ExerciseUse.AgilityPlanned)]
    [InlineData(12, ExerciseUse.Acceleration, ExerciseUse.FlyingSprint, ExerciseUse.HillSprint)]
    [InlineData(12, ExerciseUse.EasyRun, ExerciseUse.EasyRunNew)]
    [InlineData(14, ExerciseUse.MovementGame, ExerciseUse.TagGame)]
    [InlineData(6, ExerciseUse.ActiveRecovery)]
    public void Each_kind_of_exercise_has_many_entries(int fewest, params ExerciseUse[] uses) => AtLeast(fewest, exercise => exercise.Uses.Any(uses.Contains));

    [Fact]
    public void Every_exercise_can_be_found_by_its_name() =>
        Assert.All(ExerciseLibrary.All, exercise => Assert.Same(exercise, ExerciseLibrary.Find(exercise.Name)));

    [Fact]
    public void Every_workout_of_the_catalogue_has_content_for_each_age_group_that_may_have_it() =>
        Assert.Equal(
            WorkoutCatalogue.All.Select(workout => workout.Name).Order(),
            SheetGrid.All().Select(sample => sample.Workout.Name).Distinct().Order());

    [Fact]
    public void Most_main_and_trunk_exercises_lead_to_an_easier_or_harder_one()
    {
        var worked = ExerciseLibrary.All.Where(exercise => exercise.Part is "main" or "core").ToArray();
        Assert.True(worked.Count(exercise => (exercise.Easier ?? exercise.Harder) is not null) >= 0.7 * worked.Length);
    }

    [Fact]
    public void Every_piece_of_equipment_and_every_setting_is_used()
    {
        Assert.Equal(Enum.GetValues<Equipment>(), ExerciseLibrary.All.SelectMany(exercise => exercise.Equipment).Distinct().Order());
        Assert.Equal(Enum.GetValues<Setting>(), ExerciseLibrary.All.SelectMany(exercise => exercise.Settings).Distinct().Order());
    }

    [Fact]
    public void Notes_are_whole_sentences_in_plain_text()
    {
        foreach (var exercise in ExerciseLibrary.All)
        {
            Assert.EndsWith(".", exercise.Note(Effort.Unsaid), StringComparison.Ordinal);
            Assert.True(exercise.Note(Effort.Unsaid).Length > 60, exercise.Name);
        }
    }

    [Fact]
    public void What_follows_a_colon_in_a_note_goes_on_in_lower_case() =>
        Assert.All(
            ExerciseLibrary.All.SelectMany(exercise => new[] { exercise.Caution, exercise.WithoutEquipment }).OfType<string>(),
            text => Assert.True(char.IsLower(text[0]), text));

    [Fact]
    public void Coaching_points_are_short_and_have_no_full_stop() =>
        Assert.All(ExerciseLibrary.All.SelectMany(exercise => exercise.Points), point => Assert.True(char.IsUpper(point[0]) && !point.EndsWith('.') && point.Length <= 60, point));

    [Fact]
    public void Faults_are_short() =>
        Assert.All(ExerciseLibrary.All.SelectMany(exercise => exercise.Faults), fault => Assert.InRange(fault.Length, 20, 110));

    [Fact]
    public void Faults_stay_out_of_what_players_read() =>
        Assert.All(ExerciseLibrary.All, exercise => Assert.All(exercise.Faults, fault => Assert.DoesNotContain(fault, exercise.Note(Effort.Unsaid), StringComparison.Ordinal)));

    [Fact]
    public void Nothing_is_written_twice_or_left_untidy() =>
        Assert.All(ExerciseLibrary.All, exercise => Assert.All(Texts(exercise), text => Assert.False(Untidy().IsMatch(text), text)));

    [Fact]
    public void Words_are_spelt_the_British_way_and_always_the_same() =>
        Assert.All(ExerciseLibrary.All, exercise => Assert.All(Texts(exercise), text => Assert.False(OtherSpelling().IsMatch(text), text)));

    [Fact]
    public void Games_for_children_set_no_targets()
    {
        var games = ExerciseLibrary.All.Where(exercise => exercise.Uses.Any(use => use is ExerciseUse.MovementGame or ExerciseUse.TagGame or ExerciseUse.SmallGame or ExerciseUse.ChildWarmUp or ExerciseUse.ChildCoolDown)).ToArray();

        Assert.All(games, game =>
        {
            Assert.False(game.Loaded, game.Name);
            Assert.All(Texts(game), text => Assert.False(Target().IsMatch(text), $"{game.Name}: {text}"));
        });
    }

    [Fact]
    public void Games_for_children_are_open_to_the_youngest() =>
        Assert.All(ExerciseLibrary.All.Where(exercise => exercise.Uses.Any(use => use is ExerciseUse.MovementGame or ExerciseUse.TagGame)), game => Assert.Equal(6, game.YoungestAge));

    private static void AtLeast(int fewest, Func<Exercise, bool> counts) =>
        Assert.InRange(ExerciseLibrary.All.Count(counts), fewest, int.MaxValue);

    private static IEnumerable<string> Texts(Exercise exercise) =>
        [exercise.Name, exercise.Purpose, exercise.How, .. exercise.Points, .. exercise.Faults, exercise.Caution ?? "", exercise.WithoutEquipment ?? ""];

    [GeneratedRegex(@"  |\.\.|;;|\s$|^\s|\b(\w+) \1\b|[–—’“”|]")]
    private static partial Regex Untidy();

    [GeneratedRegex(@"\b(\w*colors?|centers?|meters?|gray|favor|program|practicing|traveling|defense|offense|toward|dumbbells?|pushups?|pullups?|\w{3,}iz(e|es|ed|ing)|skillful|maneuvers?)\b", RegexOptions.IgnoreCase)]
    private static partial Regex OtherSpelling();

    [GeneratedRegex(@"\d|%|\b(percent|kilogram\w*|kilos?|met(re|er)s?|seconds?|minutes?|repetitions?|reps|sets|load\w*|records?)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Target();
}
