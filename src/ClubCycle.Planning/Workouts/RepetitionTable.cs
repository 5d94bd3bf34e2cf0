using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

/// <summary>How many repetitions a load allows, and how much load an age allows.</summary>
/// <remarks>
/// Repetitions: Haff and Triplett (eds) 2016, Essentials of Strength Training and Conditioning, 4th ed., ch. 17, table of percent of 1RM and repetitions;
/// the rows 70, 67 and 65 % from memory. Ceilings for minors: Australian Strength and Conditioning Association, from memory.
/// </remarks>
public static class RepetitionTable
{
    private static readonly (int Percent, int Reps)[] Rows =
        [(65, 15), (67, 12), (70, 11), (75, 10), (77, 9), (80, 8), (83, 7), (85, 6), (87, 5), (90, 4), (93, 3), (95, 2), (100, 1)];

    /// <summary>Most repetitions at a load. Between two rows the heavier row decides; 65 % or less allows 15.</summary>
    /// <param name="percent">Of the load that can be lifted once, 1 to 100.</param>
    public static int MostReps(int percent)
    {
        foreach (var row in Rows)
        {
            if (percent <= row.Percent)
            {
                return row.Reps;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(percent), percent, "A load is at most 100 % of the maximum.");
    }

    /// <summary>Heaviest planned load in percent of the maximum; 0 for body weight only. The youngest of the group decides.</summary>
    public static int Ceiling(AgeGroup ageGroup) => ageGroup.YoungestAge switch
    {
        < 9 => 0,
        < 12 => 60,
        < 15 => 70,
        < 18 => 80,
        _ when ageGroup.IsMasters => 82,
        _ => 87,
    };
}
