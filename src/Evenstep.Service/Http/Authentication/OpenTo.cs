namespace Evenstep.Service.Http.Authentication;

/// <summary>Whom the service answers while there are no keys.</summary>
internal enum OpenTo
{
    /// <summary>Callers on the same machine, who call it by a name of that machine.</summary>
    Loopback,

    /// <summary>Anybody: something else keeps strangers away.</summary>
    Everywhere,
}
