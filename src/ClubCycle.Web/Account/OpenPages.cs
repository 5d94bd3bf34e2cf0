using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server.Circuits;

namespace ClubCycle.Web.Account;

/// <summary>The connected live pages of each person on this node. Each costs memory, so nobody has more than many tabs need. Of those that lost their connection the framework keeps a hundred.</summary>
public sealed class OpenPages
{
    public const int Most = 20;

    private readonly Dictionary<Guid, int> _open = [];

    /// <summary>Whether this person must close a page before opening another.</summary>
    public bool AreAllTaken(ClaimsPrincipal person)
    {
        lock (_open)
        {
            return PersonOf(person) is { } id && _open.GetValueOrDefault(id) >= Most;
        }
    }

    private static Guid? PersonOf(ClaimsPrincipal person) => CurrentCoach.IdOf(person, ClaimTypes.NameIdentifier);

    private bool Add(Guid person)
    {
        lock (_open)
        {
            var open = _open.GetValueOrDefault(person);
            if (open < Most)
            {
                _open[person] = open + 1;
            }

            return open < Most;
        }
    }

    private void Remove(Guid person)
    {
        lock (_open)
        {
            if (--_open[person] == 0)
            {
                _open.Remove(person);
            }
        }
    }

    internal sealed class OfCircuit(AuthenticationStateProvider state, OpenPages pages) : CircuitHandler
    {
        /// <summary>Presses, keys and pieces of files that a page takes at once, and each second after that: several times what the fastest hands send.</summary>
        private const int AtOnce = 500;
        private const int EachSecond = 50;

        private Guid? _counted;
        private double _left = AtOnce;
        private long _at = TimeProvider.System.GetTimestamp();

        /// <remarks>Who is told in time sees a sentence instead (App.razor); this ends a page that was begun meanwhile, or by no browser.</remarks>
        public override async Task OnConnectionUpAsync(Circuit circuit, CancellationToken cancellationToken)
        {
            if (_counted is null && PersonOf((await state.GetAuthenticationStateAsync()).User) is { } person)
            {
                _counted = pages.Add(person) ? person : throw new InvalidOperationException($"A person who has {Most} pages open opened another.");
            }
        }

        public override Task OnConnectionDownAsync(Circuit circuit, CancellationToken cancellationToken)
        {
            if (_counted is { } person)
            {
                _counted = null;
                pages.Remove(person);
            }

            return Task.CompletedTask;
        }

        public override Func<CircuitInboundActivityContext, Task> CreateInboundActivityHandler(Func<CircuitInboundActivityContext, Task> next) => activity =>
        {
            var now = TimeProvider.System.GetTimestamp();
            _left = Math.Min(AtOnce, _left + (TimeProvider.System.GetElapsedTime(_at, now).TotalSeconds * EachSecond)) - 1;
            _at = now;
            return _left < 0 ? throw new InvalidOperationException("A page sent more than any hands can.") : next(activity);
        };
    }
}
