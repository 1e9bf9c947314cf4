
namespace Evenstep.Service.Catalogues.Storing;

/// <summary>Which version of a catalogue is stored, and in which revision of the storage it was written.</summary>
internal sealed record StoredVersion(CatalogueKey Key, string Version, long Revision);

/// <summary>Which versions of all catalogues were stored at one revision of the storage.</summary>
internal sealed record StoredVersions(long Revision, IReadOnlyList<StoredVersion> Catalogues);

/// <summary>A catalogue as it is stored.</summary>
/// <param name="Version">Its version.</param>
/// <param name="Revision">The revision of the storage in which it was written.</param>
/// <param name="Content">Its content; null where the caller knew that version already.</param>
internal sealed record StoredCatalogue(string Version, long Revision, ReadOnlyMemory<byte>? Content);
