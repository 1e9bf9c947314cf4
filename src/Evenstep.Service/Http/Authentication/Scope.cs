namespace Evenstep.Service.Http.Authentication;

/// <summary>What a key allows.</summary>
internal enum Scope
{
    /// <summary>To ask for everything that changes nothing.</summary>
    Read,

    /// <summary>To change catalogues.</summary>
    Write,
}
