namespace ClubCycle.NothingLost.Kills;

/// <param name="Saved">Acknowledged saves, publishings among them.</param>
/// <param name="Wrong">Each acknowledged change that was lost, each half publishing, each feed that stayed behind.</param>
/// <param name="DatabaseReady">From the kill of the server to the next acknowledged save and the next feed.</param>
/// <param name="WebReady">From the kill of the web node to the next feed.</param>
/// <param name="Editors">Kills of the editing process.</param>
public sealed record KillFigures(int Saved, int Published, IReadOnlyList<string> Wrong, IReadOnlyList<TimeSpan> DatabaseReady, IReadOnlyList<TimeSpan> WebReady, int Editors);
