using ClubCycle.Data.Players;
using ClubCycle.Web.Features.Players;
using NodaTime;

namespace ClubCycle.Web.Tests.Features.Players;

public sealed class PersonFilesTests
{
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    public void A_name_never_runs_as_a_formula_in_a_spreadsheet(string name) =>
        Assert.Contains($"\"'{name}\"", PersonFiles.Csv(File(name)), StringComparison.Ordinal);

    [Fact]
    public void The_table_has_one_row_for_each_value() => Assert.Equal(
        """
        part,number,field,value
        player,,exportedBy,Sam Okell
        player,,exportedAt,2026-03-03T12:00:00Z
        player,,club,Sandhaven
        player,,squad,Girls U16
        player,,ageGroup,u16
        player,,name,"Vale, Robin"
        player,,birthYear,
        player,,asksHealthQuestions,False
        player,,healthSettledOn,
        player,,growingFastSince,2026-01-15
        player,,protected,False
        player,,addedOn,2026-03-01
        tests,1,on,2026-02-20
        tests,1,test,ShuttleRun
        tests,1,value,9
        tests,1,second,
        tests,1,exercise,

        """.ReplaceLineEndings("\r\n"),
        PersonFiles.Csv(File("Vale, Robin") with { Tests = [new PersonTest(new LocalDate(2026, 2, 20), "ShuttleRun", 9, null, null)] }));

    private static PersonFile File(string name) =>
        new("Sam Okell", Instant.FromUtc(2026, 3, 3, 12, 0), "Sandhaven", "Girls U16", "u16", name, null, false, null, new LocalDate(2026, 1, 15), false, new LocalDate(2026, 3, 1), [], [], [], []);
}
