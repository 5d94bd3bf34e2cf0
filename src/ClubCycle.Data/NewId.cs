namespace ClubCycle.Data;

/// <summary>The one place that makes ids for new rows. Ordered by time, so indexes grow at their end; never a secret.</summary>
public static class NewId
{
    public static Guid Create() => Guid.CreateVersion7();
}
