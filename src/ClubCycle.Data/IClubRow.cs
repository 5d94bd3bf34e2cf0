namespace ClubCycle.Data;

/// <summary>A row that belongs to a club: in schema <c>club</c>, behind the named filter and row-level security.</summary>
public interface IClubRow
{
    Guid ClubId { get; }
}
