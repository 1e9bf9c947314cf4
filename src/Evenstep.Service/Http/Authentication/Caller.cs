
namespace Evenstep.Service.Http.Authentication;

/// <summary>Who sends a request: whoever holds a key, or anybody where none is asked for.</summary>
internal sealed class Caller(KeyRing ring)
{
    /// <summary>The key that the request came with; null where none is asked for.</summary>
    public ApiKey? Key { get; set; }

    public Owner Owner => Key?.Owner ?? Owner.Nobody;

    /// <summary>How often the caller may ask; null for as often as one likes.</summary>
    public KeyRate? Rate => Now?.Rate;

    /// <summary>Whether the key has been revoked, or may no longer read, since the request came.</summary>
    public bool IsLockedOut => Key is not null && Now?.Allows(Scope.Read) != true;

    private ApiKey? Now => Key is null ? null : ring.Now.Heir(Key);
}
