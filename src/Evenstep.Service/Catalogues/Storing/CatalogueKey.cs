using Evenstep.Service.Http.Authentication;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>Tells a stored catalogue from all others: two owners may each have one of the same id.</summary>
internal sealed record CatalogueKey(Owner Owner, string Id);
