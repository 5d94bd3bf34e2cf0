namespace ClubCycle.Data;

/// <summary>The club that this request, circuit or piece of background work is for. Set once by whoever knows it.</summary>
public sealed class CurrentClub
{
    private Guid? _id;

    public Guid Id => _id ?? throw new InvalidOperationException("No club was set for this scope: call CurrentClub.Use first.");

    public bool IsKnown => _id is not null;

    /// <summary>Tells this scope's own changes from others'.</summary>
    public Guid Origin { get; } = NewId.Create();

    public void Use(Guid club)
    {
        if (_id is { } known && known != club)
        {
            throw new InvalidOperationException("A scope works for one club; open another scope for another club.");
        }

        _id = club;
    }
}
