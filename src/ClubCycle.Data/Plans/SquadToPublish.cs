namespace ClubCycle.Data.Plans;

/// <summary>A squad whose draft somebody wants to publish.</summary>
/// <param name="ExpectedRevision">The latest revision the publisher saw; 0 for none.</param>
/// <param name="CommandId">Made when the button was shown: asking twice publishes once.</param>
public sealed record SquadToPublish(Guid SquadId, int ExpectedRevision, Guid CommandId);
