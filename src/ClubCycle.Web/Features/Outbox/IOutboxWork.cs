using ClubCycle.Data.Outbox;

namespace ClubCycle.Web.Features.Outbox;

/// <summary>Does one kind of work from the outbox.</summary>
internal interface IOutboxWork
{
    /// <summary>One of <see cref="OutboxKinds"/>.</summary>
    string Kind { get; }

    /// <summary>Throws when it could not be done; then it is tried again later. Takes less than <see cref="OutboxStore.PatienceFor"/>.</summary>
    Task DoAsync(OutboxMessage message, CancellationToken cancel);
}
