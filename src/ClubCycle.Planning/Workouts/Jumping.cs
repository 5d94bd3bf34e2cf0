using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

/// <summary>Jumps, dosed by foot contacts.</summary>
/// <remarks>
/// Contacts per session by experience, 80–100, 100–120, 120–140: Potach and Chu in Haff and Triplett 2016, ch. 18. Under 15 years: start at 60 or less,
/// at most 10 % more a week, at most 100 (Johnson et al. 2011 and the same chapter), low class only. Rest of 45–60 s between sets; one rise of 4 % a week keeps two
/// weeks of rise under 10 % (editorial). High-class and shock jumps are never planned.
/// </remarks>
internal static class Jumping
{
    private const double WeeklyRise = 1.04;
    private const double SecondsPerJump = 1.5;
    private const int Rest = 60;

    /// <summary>Under this age the children's numbers hold.</summary>
    private const int Grown = 15;

    public static List<Step> Jumps(DoseContext context, Picker picker, int budget) => Steps(context, picker, budget, 1, ClassFor(context.AgeGroup));

    public static List<Step> LowJumps(DoseContext context, Picker picker, int budget) => Steps(context, picker, budget, 0.7, JumpClass.Low);

    /// <summary>Half the contacts, because heavy lifting follows.</summary>
    public static List<Step> BeforeLifting(DoseContext context, Picker picker, int budget) => Steps(context, picker, budget, 0.5, ClassFor(context.AgeGroup));

    /// <summary>Most contacts in one session.</summary>
    public static int MostContacts(AgeGroup ageGroup, TrainingAge trainingAge) => ageGroup.YoungestAge < Grown ? 100 : trainingAge switch
    {
        TrainingAge.New => 100,
        TrainingAge.Some => 120,
        _ => 140,
    };

    private static JumpClass ClassFor(AgeGroup ageGroup) => ageGroup.IsMasters || ageGroup.YoungestAge < Grown ? JumpClass.Low : JumpClass.Medium;

    private static List<Step> Steps(DoseContext context, Picker picker, int budget, double share, JumpClass jumps)
    {
        var use = jumps is JumpClass.Medium ? ExerciseUse.JumpMedium : ExerciseUse.JumpLow;
        var exercises = new Exercise[budget < 8 ? 2 : 4];
        for (var i = 0; i < exercises.Length; i++)
        {
            exercises[i] = picker.Take(use);
        }

        var contacts = Contacts(context, share);
        var repsAtMost = jumps is JumpClass.Medium ? 6 : 8;
        while (true)
        {
            var steps = Share(exercises, contacts, repsAtMost);
            if (steps.Minutes() <= budget || contacts <= 1)
            {
                return steps;
            }

            contacts--;
        }
    }

    private static int Contacts(DoseContext context, double share)
    {
        var most = MostContacts(context.AgeGroup, context.TrainingAge);
        var child = context.AgeGroup.YoungestAge < Grown;
        var start = child ? 56 : most - 20;

        // Weeks without jumps are no reason to jump more: children rise with every second of their sessions, so that easier ones in between leave no leap.
        var level = child ? Math.Min(context.Level(), context.Turn) / 2 : context.Level();
        var part = child ? 1 : share * (context.AgeGroup.IsMasters ? 0.7 : 1);
        return Math.Min(context.ContactsAtMost ?? most, context.Scaled((int)(Math.Min(most, start * Math.Pow(WeeklyRise, level)) * part)));
    }

    /// <summary>Spreads the contacts over the exercises in equal numbers of sets; never more than asked for.</summary>
    private static List<Step> Share(Exercise[] exercises, int contacts, int repsAtMost)
    {
        var count = Math.Min(exercises.Length, contacts);
        var sets = (contacts + (count * repsAtMost) - 1) / (count * repsAtMost);
        var reps = contacts / sets;
        List<Step> steps = [];
        for (var i = 0; i < count; i++)
        {
            var exercise = exercises[i];
            var own = (reps / count) + (i < reps % count ? 1 : 0);
            if (own > 0)
            {
                var seconds = (int)(sets * own * SecondsPerJump) + ((sets - 1) * Rest);
                steps.Add(new(exercise.Part, exercise.Name, exercise.Note(Effort.Springy), sets, own, Minutes: Clock.Minutes(seconds), RestSeconds: sets > 1 ? Rest : null, FootContacts: sets * own * exercise.ContactsPerRep));
            }
        }

        return steps;
    }
}
