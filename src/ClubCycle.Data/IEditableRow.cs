namespace ClubCycle.Data;

/// <summary>A row that people edit: a save over a version that is not theirs is refused.</summary>
public interface IEditableRow
{
    /// <summary>Counts the saves, from 1.</summary>
    int Version { get; set; }
}
