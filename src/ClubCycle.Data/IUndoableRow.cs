namespace ClubCycle.Data;

/// <summary>A row that a year is planned from: what a person does to it is remembered and can be undone.</summary>
public interface IUndoableRow : IClubRow;
