namespace ClubCycle.Planning;

/// <summary>In files: <c>session</c>, <c>practice</c>, <c>match</c>, <c>active-recovery</c>.</summary>
public enum SessionKind
{
    Session,
    Practice,
    Match,
    ActiveRecovery,
}
