namespace ClubCycle.Web.Api;

// The shapes of the plan file, for the interface description only. Reading and writing is in Planning/PlanFiles; a test compares the names.

/// <summary>What to plan. Dates are ISO 8601, times local to the club's zone.</summary>
internal sealed record PlanRequestFile(
    ClubPart Club, SquadPart Squad, SeasonPart Season, IReadOnlyList<FixturePart>? Fixtures, IReadOnlyList<ClosedPart>? Closed,
    object? Template, DateOnly? PlanFrom, PlanReplyFile? Published, IReadOnlyList<PinPart>? Pins, IReadOnlyList<LengthPart>? Lengths, IReadOnlyList<SessionPart>? Before);

internal sealed record ClubPart(string TimeZone, string? FirstWeekday);

internal sealed record SquadPart(
    Guid? Id, string Name, string AgeGroup, string? TrainingAge, IReadOnlyList<PracticePart>? Practices, string MatchDay, string? MatchStart, IReadOnlyList<WindowPart>? Windows);

internal sealed record PracticePart(string Day, string Start, int Minutes, IReadOnlyList<string>? Phases, string? Place);

internal sealed record WindowPart(IReadOnlyList<string> Days, string From, string To);

internal sealed record SeasonPart(DateOnly? PreviousLastDay, IReadOnlyList<StintPart> Stints);

internal sealed record StintPart(DateOnly First, DateOnly Last);

internal sealed record FixturePart(DateOnly Date, string? Start, string? Opponent, Guid? Id, string? Place);

internal sealed record ClosedPart(DateOnly First, DateOnly Last, string? Why);

internal sealed record PinPart(DateOnly WeekFirst, string Slot, DateOnly? Date, string? Start, bool? Skipped, string? Workout, int? Minutes, string? Note);

internal sealed record LengthPart(int Gap, string Chain, int Phase, int Weeks);

/// <summary>A squad's year. Lists are in date order; loads are in arbitrary units.</summary>
internal sealed record PlanReplyFile(
    CyclePart Cycle, IReadOnlyList<PhasePart> Phases, IReadOnlyList<WeekPart> Weeks, IReadOnlyList<SessionPart> Sessions, IReadOnlyList<LeftOutPart>? LeftOut,
    IReadOnlyList<FindingPart> Findings, ChangesPart Changes);

internal sealed record CyclePart(DateOnly First, DateOnly Last);

internal sealed record PhasePart(string Kind, DateOnly First, DateOnly Last, int Weeks, string Chain);

internal sealed record WeekPart(string Week, DateOnly First, string Phase, int WeekInPhase, string Loading, int PlannedLoadAu);

internal sealed record SessionPart(
    Guid Uid, string Slot, DateOnly Date, string Start, int Minutes, string Kind, IReadOnlyList<string> Qualities, string Hardness, int PlannedEffort, string Title,
    IReadOnlyList<string> Why, IReadOnlyList<StepPart> Steps, IReadOnlyList<string> Cautions, string? Workout, bool? InsidePractice, bool? Pinned, string? Note, string? Place);

internal sealed record LeftOutPart(DateOnly WeekFirst, string Slot);

internal sealed record StepPart(
    string Part, string Name, int? Sets, int? Reps, int? Seconds, int? Minutes, int? Metres, int? RestSeconds, int? FootContacts, int? PercentOfMaximum, string Note);

internal sealed record FindingPart(string Rule, string Strength, string? Week, DateOnly? WeekFirst, string Message, string Mend, string Source, string? ForcedBy);

internal sealed record ChangesPart(int Kept, IReadOnlyList<MovedPart> Moved, IReadOnlyList<AddedPart> Added, IReadOnlyList<DroppedPart> Dropped);

internal sealed record MovedPart(Guid Uid, string Title, string From, string To, string Why);

internal sealed record AddedPart(Guid Uid, string Title, string At);

internal sealed record DroppedPart(Guid Uid, string Title, string At, string Why);

/// <summary>Why the request could not be planned.</summary>
internal sealed record ProblemsFile(IReadOnlyList<ProblemPart> Problems);

internal sealed record ProblemPart(string Code, string At, string Message);
