using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Workouts;

public sealed class ExerciseLibraryTests
{
    private const string Good = """
        { "name": "Test hop", "part": "main", "uses": ["jump-low"], "youngestAge": 9, "jumps": "low", "purpose": "Tests.", "note": "Hop.", "points": ["Softly"] }
        """;

    [Fact]
    public void The_library_is_large_enough_to_vary() => Assert.True(ExerciseLibrary.All.Count >= 140, $"{ExerciseLibrary.All.Count} entries");

    [Fact]
    public void Every_exercise_can_be_found_by_its_name() =>
        Assert.All(ExerciseLibrary.All, exercise => Assert.Same(exercise, ExerciseLibrary.Find(exercise.Name)));

    [Fact]
    public void Every_workout_of_the_catalogue_has_content_for_each_age_group_that_may_have_it() =>
        Assert.Equal(
            WorkoutCatalogue.All.Select(workout => workout.Name).Order(),
            SheetGrid.All().Select(sample => sample.Workout.Name).Distinct().Order());

    [Fact]
    public void Every_use_offers_a_choice() =>
        Assert.All(
            Enum.GetValues<ExerciseUse>().Where(use => use is not (ExerciseUse.Practice or ExerciseUse.Match)),
            use => Assert.True(ExerciseLibrary.For(use, AgeGroup.Senior).Count >= 2, use.ToString()));

    [Fact]
    public void Notes_are_whole_sentences_in_plain_text()
    {
        foreach (var exercise in ExerciseLibrary.All)
        {
            Assert.EndsWith(".", exercise.Note(Effort.Unsaid), StringComparison.Ordinal);
            Assert.DoesNotContain("  ", exercise.Note(Effort.Unsaid), StringComparison.Ordinal);
            Assert.DoesNotContain("..", exercise.Note(Effort.Unsaid), StringComparison.Ordinal);
            Assert.True(exercise.Note(Effort.Unsaid).Length > 60, exercise.Name);
        }
    }

    [Fact]
    public void Exercises_that_need_equipment_say_what_to_do_without() =>
        Assert.All(ExerciseLibrary.All.Where(exercise => exercise.Loaded), exercise => Assert.NotNull(exercise.WithoutEquipment));

    [Fact]
    public void A_good_entry_is_read()
    {
        var exercise = Assert.Single(ExerciseLibrary.Read("test.json", $"[{Good}]"));
        Assert.Equal("Test hop", exercise.Name);
        Assert.Equal(JumpClass.Low, exercise.Jumps);
        Assert.Equal(1, exercise.ContactsPerRep);
        Assert.Equal("Hop. Look for: softly.", exercise.Note(Effort.Unsaid));
    }

    [Theory]
    [InlineData("\"part\": \"main\"", "\"part\": \"middle\"", "not a part of a session")]
    [InlineData("[\"jump-low\"]", "[]", "no use")]
    [InlineData("[\"jump-low\"]", "[\"jump-deep\"]", "ExerciseUse")]
    [InlineData("\"Tests.\"", "\"\"", "must be sentences")]
    [InlineData("[\"Softly\"]", "[]", "no coaching point")]
    [InlineData("[\"Softly\"]", "[\" \"]", "coaching point is empty")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"high\"", "high-class")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"medium\"", "15 years")]
    [InlineData("\"jumps\": \"low\", ", "", "must go together")]
    [InlineData("\"youngestAge\": 9", "\"youngestAge\": 3", "6 to 18")]
    [InlineData("\"youngestAge\": 9", "\"youngestAge\": 8, \"loaded\": true", "loads are for")]
    [InlineData("\"youngestAge\": 9, ", "", "youngestAge")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"low\", \"colour\": \"red\"", "colour")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"low\", \"caution\": \"mind\"", "full stop")]
    [InlineData("[\"jump-low\"]", "[\"jump-low\", \"agility-cued\"]", "unpredictable cue")]
    public void A_bad_entry_is_refused_by_its_name(string good, string bad, string reason)
    {
        var json = Good.Replace(good, bad, StringComparison.Ordinal);
        Assert.NotEqual(Good, json);

        var refused = Assert.Throws<InvalidDataException>(() => ExerciseLibrary.Read("test.json", $"[{json}]"));

        Assert.Contains("test.json", refused.Message, StringComparison.Ordinal);
        Assert.Contains("Test hop", refused.Message, StringComparison.Ordinal);
        Assert.Contains(reason, refused.Message, StringComparison.Ordinal);
    }
}
