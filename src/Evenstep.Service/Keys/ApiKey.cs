using System.Collections.Immutable;
using Evenstep.Service.Catalogues;

namespace Evenstep.Service.Keys;

/// <summary>A key that was given out. Of the key itself only a hash is known.</summary>
internal sealed class ApiKey : IDisposable
{
    /// <summary>What it is called in the configuration; nothing secret.</summary>
    public required string Name { get; init; }

    /// <summary>The SHA-256 of the key. A key is 256 random bits, so that its hash needs neither salt nor slowness.</summary>
    public required ImmutableArray<byte> Hash { get; init; }

    public required Owner Owner { get; init; }

    public required ImmutableArray<Scope> Scopes { get; init; }

    /// <summary>The web origins whose pages may use it; empty for a key that no browser is given.</summary>
    public required ImmutableArray<string> Origins { get; init; }

    /// <summary>How often it may be used; null for as often as one likes.</summary>
    public required KeyRate? Rate { get; init; }

    public bool Allows(Scope scope) => Scopes.Contains(scope);

    /// <summary>Whether a request with this `Origin` may use it. A key for browsers goes with its pages only.</summary>
    public bool IsFor(string? origin) => Origins.IsEmpty || (origin is not null && Origins.Contains(origin, StringComparer.Ordinal));

    public void Dispose() => Rate?.Dispose();
}
