using Evenstep.Service.Catalogues;

namespace Evenstep.Service.Keys;

/// <summary>Who sends a request: whoever holds a key, or anybody where none is asked for.</summary>
internal sealed class Caller
{
    /// <summary>Null where none is asked for.</summary>
    public ApiKey? Key { get; set; }

    public Owner Owner => Key?.Owner ?? Owner.Nobody;

    /// <summary>How often the caller may ask; null for as often as one likes.</summary>
    public KeyRate? Rate => Key?.Rate;
}
