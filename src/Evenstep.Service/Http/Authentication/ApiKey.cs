using System.Collections.Immutable;

namespace Evenstep.Service.Http.Authentication;

/// <summary>A key that was given out. Of the key itself only a hash is known.</summary>
internal sealed record ApiKey : IDisposable
{
    /// <summary>So many digits of its hash tell a key from all others in practice.</summary>
    private const int LeastDigits = 8;

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

    /// <summary>When it was made; null if that was not noted.</summary>
    public required DateTimeOffset? Made { get; init; }

    public bool Allows(Scope scope) => Scopes.Contains(scope);

    /// <summary>Whether a request with this `Origin` may use it. A key for browsers goes with its pages only.</summary>
    public bool IsFor(string? origin) => Origins.IsEmpty || (origin is not null && Origins.Contains(origin, StringComparer.Ordinal));

    /// <summary>Whether somebody means this key: by its name, or by the first digits of its hash.</summary>
    public bool IsCalled(string text) => Name == text
        || (text.Length >= LeastDigits && Convert.ToHexStringLower(Hash.AsSpan()).StartsWith(text, StringComparison.OrdinalIgnoreCase));

    /// <summary>This key with what is used up of its rate, as the same key was known before; null if it was not.</summary>
    public ApiKey After(ApiKey? before)
    {
        if (Rate is null || before?.Rate is not { } rate || rate.PerMinute != Rate.PerMinute)
        {
            return this;
        }

        Rate.Dispose();
        return this with { Rate = rate };
    }

    public void Dispose() => Rate?.Dispose();
}
