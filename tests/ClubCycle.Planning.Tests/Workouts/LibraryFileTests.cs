using System.Text;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Workouts;

/// <summary>What the library's reader accepts, and how it says what is wrong.</summary>
public sealed class LibraryFileTests
{
    private const string Good = """
        { "name": "Test hop", "part": "main", "uses": ["jump-low"], "youngestAge": 9, "jumps": "low", "equipment": ["mat"], "setting": ["hall"],
          "purpose": "Tests.", "note": "Hop.", "points": ["Softly"], "faults": ["Lands loud: listen."], "withoutEquipment": "use grass." }
        """;

    private const string Other = """
        { "name": "Other hop", "part": "main", "uses": ["jump-low"], "youngestAge": 9, "jumps": "low", "equipment": [], "setting": ["pitch", "home"],
          "purpose": "Tests.", "note": "Hop on.", "points": ["Softly"], "faults": ["Lands loud: listen."] }
        """;

    [Fact]
    public void A_good_entry_is_read()
    {
        var exercise = Assert.Single(Read($"[{Good}]"));

        Assert.Equal("Test hop", exercise.Name);
        Assert.Equal(JumpClass.Low, exercise.Jumps);
        Assert.Equal(1, exercise.ContactsPerRep);
        Assert.Equal([Equipment.Mat], exercise.Equipment);
        Assert.Equal([Setting.Hall], exercise.Settings);
        Assert.Equal(["Lands loud: listen."], exercise.Faults);
        Assert.Equal(TrainingAge.New, exercise.YoungestTrainingAge);
        Assert.Equal([Quality.Speed], exercise.Qualities);
        Assert.Equal("Hop. Look for: softly. Without equipment: use grass.", exercise.Note(Effort.Unsaid));
    }

    [Theory]
    [InlineData("\"part\": \"main\"", "\"part\": \"middle\"", "not a part of a session")]
    [InlineData("[\"jump-low\"]", "[]", "no use")]
    [InlineData("[\"jump-low\"]", "[\"jump-deep\"]", "ExerciseUse")]
    [InlineData("\"Tests.\"", "\"\"", "must be sentences")]
    [InlineData("\"Hop.\"", "\"hop\"", "must be sentences")]
    [InlineData("[\"Softly\"]", "[]", "no coaching point")]
    [InlineData("[\"Softly\"]", "[\" \"]", "coaching point is empty")]
    [InlineData("[\"Lands loud: listen.\"]", "[]", "1 to 3 faults")]
    [InlineData("[\"Lands loud: listen.\"]", "[\"A: b.\", \"B: c.\", \"C: d.\", \"D: e.\"]", "1 to 3 faults")]
    [InlineData("\"Lands loud: listen.\"", "\"\"", "a fault must be a sentence")]
    [InlineData("\"Lands loud: listen.\"", "\"Lands loud: listen\"", "a fault must be a sentence")]
    [InlineData("\"Lands loud: listen.\"", "\"Lands loud.\"", "a fault must be a sentence")]
    [InlineData("\"faults\": [\"Lands loud: listen.\"], ", "", "faults")]
    [InlineData("[\"mat\"]", "[\"carpet\"]", "Equipment")]
    [InlineData("[\"mat\"]", "[\"mat\", \"mat\"]", "equipment comes twice")]
    [InlineData("[\"mat\"]", "[]", "needs none")]
    [InlineData("\"equipment\": [\"mat\"], ", "", "equipment")]
    [InlineData(", \"withoutEquipment\": \"use grass.\"", "", "must say what to do without")]
    [InlineData("\"use grass.\"", "\"use grass\"", "alternative must end with a full stop")]
    [InlineData("[\"hall\"]", "[]", "no setting")]
    [InlineData("[\"hall\"]", "[\"hall\", \"hall\"]", "setting comes twice")]
    [InlineData("[\"hall\"]", "[\"beach\"]", "Setting")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"high\"", "high-class")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"medium\"", "15 years")]
    [InlineData("\"jumps\": \"low\", ", "", "must go together")]
    [InlineData("\"youngestAge\": 9", "\"youngestAge\": 3", "6 to 18")]
    [InlineData("\"youngestAge\": 9", "\"youngestAge\": 8, \"loaded\": true", "loads are for")]
    [InlineData("[\"jump-low\"]", "[\"jump-low\", \"heavy-squat\"]", "heavy lifting is for 15 years")]
    [InlineData("\"youngestAge\": 9, ", "", "youngestAge")]
    [InlineData("\"youngestAge\": 9", "\"youngestAge\": 9, \"youngestTrainingAge\": \"old\"", "TrainingAge")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"low\", \"colour\": \"red\"", "colour")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"low\", \"caution\": \"mind\"", "caution must end with a full stop")]
    [InlineData("[\"jump-low\"]", "[\"jump-low\", \"agility-cued\"]", "unpredictable cue")]
    [InlineData("[\"jump-low\"]", "[\"jump-low\", \"agility-planned\"], \"cued\": true", "has no cue")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"low\", \"easier\": \"Test hop\"", "easier than itself")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"low\", \"harder\": \"Test hop\"", "harder than itself")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"low\", \"easier\": \"Moon hop\"", "\"Moon hop\" is not in the library")]
    [InlineData("\"jumps\": \"low\"", "\"jumps\": \"low\", \"harder\": \"Moon hop\"", "\"Moon hop\" is not in the library")]
    [InlineData("\"part\": \"main\"", "\"part\": \"core\", \"easier\": \"Other hop\"", "another part")]
    [InlineData("\"youngestAge\": 9", "\"youngestAge\": 7, \"easier\": \"Other hop\"", "older or longer-trained")]
    [InlineData("\"youngestAge\": 9", "\"youngestAge\": 11, \"harder\": \"Other hop\"", "younger or newer")]
    [InlineData("\"youngestAge\": 9", "\"youngestAge\": 9, \"youngestTrainingAge\": \"some\", \"harder\": \"Other hop\"", "younger or newer")]
    [InlineData("\"Hop.\"", "\"Hop on.\"", "\"Other hop\" has the same note")]
    public void A_bad_entry_is_refused_with_its_file_line_and_name(string good, string bad, string reason)
    {
        var entry = Good.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal).Replace("  ", " ", StringComparison.Ordinal);
        var wrong = entry.Replace(good, bad, StringComparison.Ordinal);
        Assert.NotEqual(entry, wrong);

        var message = Refusal($"[\n{Other},\n\n  {wrong}\n]");

        Assert.StartsWith("test.json, line 5: exercise \"Test hop\": ", message, StringComparison.Ordinal);
        Assert.Contains(reason, message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_easier_exercise_may_not_ask_for_more_training()
    {
        var trained = Other.Replace("\"youngestAge\": 9", "\"youngestAge\": 9, \"youngestTrainingAge\": \"some\"", StringComparison.Ordinal);

        Assert.Contains("line 4: exercise \"Test hop\": its easier exercise \"Other hop\" is for older or longer-trained", Refusal($"[\n{trained},\n{With("easier", "Other hop")}]"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("easier", "easier")]
    [InlineData("harder", "harder")]
    public void Two_exercises_may_not_both_be_easier_than_each_other(string first, string second)
    {
        var other = Other.Replace("\"jumps\"", $"\"{second}\": \"Test hop\", \"jumps\"", StringComparison.Ordinal);

        Assert.Equal("test.json, line 1: exercise \"Test hop\": its easier exercises lead back to it.", Refusal($"[{With(first, "Other hop")},\n{other}]"));
    }

    [Fact]
    public void An_exercise_may_not_be_easier_and_harder_than_the_same_one() =>
        Assert.Contains(
            "lead back to it",
            Refusal($"[{With("easier", "Other hop").Replace("\"jumps\"", "\"harder\": \"Other hop\", \"jumps\"", StringComparison.Ordinal)}, {Other}]"),
            StringComparison.Ordinal);

    [Fact]
    public void A_step_back_named_from_both_ends_is_no_circle() =>
        Assert.Equal(2, Read($"[{With("easier", "Other hop")}, {Other.Replace("\"jumps\"", "\"harder\": \"Test hop\", \"jumps\"", StringComparison.Ordinal)}]").Count);

    [Fact]
    public void A_name_may_not_come_twice_even_in_two_files()
    {
        var refused = Assert.Throws<InvalidDataException>(() => ExerciseLibrary.Read(("a.json", Bytes($"[{Good}]")), ("b.json", Bytes($"[\n{Good}]"))));

        Assert.Equal("b.json, line 2: exercise \"Test hop\": this name is already taken.", refused.Message);
    }

    [Fact]
    public void An_entry_without_a_name_is_found_by_its_line() =>
        Assert.StartsWith("test.json, line 3: exercise \"(without a name)\"", Refusal($"[{Other},\n{Good.Replace("\"name\": \"Test hop\", ", "", StringComparison.Ordinal)}]"), StringComparison.Ordinal);

    [Fact]
    public void An_entry_that_is_none_is_found_by_its_line() =>
        Assert.StartsWith("test.json, line 3: exercise \"(without a name)\"", Refusal($"[{Other},\n7]"), StringComparison.Ordinal);

    [Fact]
    public void Nothing_in_place_of_an_entry_is_refused() =>
        Assert.StartsWith("test.json, line 3: exercise \"(without a name)\"", Refusal($"[{Other},\nnull]"), StringComparison.Ordinal);

    [Fact]
    public void Broken_text_is_refused_with_its_line() =>
        Assert.StartsWith("test.json, line 3: not readable as JSON", Refusal($"[{Other},\n{{ \"name\" \"Test hop\" }}]"), StringComparison.Ordinal);

    [Theory]
    [InlineData("{}")]
    [InlineData("7")]
    public void A_file_that_is_not_a_list_is_refused(string json) => Assert.Equal("test.json: a list of exercises is expected.", Refusal(json));

    [Fact]
    public void Text_after_the_list_is_refused() => Assert.StartsWith("test.json, line 2", Refusal("[]\n7"), StringComparison.Ordinal);

    private static string With(string link, string name) => Good.Replace("\"jumps\"", $"\"{link}\": \"{name}\", \"jumps\"", StringComparison.Ordinal);

    private static string Refusal(string json) => Assert.Throws<InvalidDataException>(() => Read(json)).Message;

    private static IReadOnlyList<Exercise> Read(string json) => ExerciseLibrary.Read(("test.json", Bytes(json)));

    private static byte[] Bytes(string json) => Encoding.UTF8.GetBytes(json.ReplaceLineEndings("\n"));
}
