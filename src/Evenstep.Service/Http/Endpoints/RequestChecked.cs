namespace Evenstep.Service.Http.Endpoints;

/// <summary>Marks the endpoints of a group with a threshold, which are also those that want a key where there are any.</summary>
internal sealed record RequestChecked;
