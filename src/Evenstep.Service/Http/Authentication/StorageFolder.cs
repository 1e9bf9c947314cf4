namespace Evenstep.Service.Http.Authentication;

/// <summary>The folder of what the service keeps.</summary>
internal static class StorageFolder
{
    public const string Key = "Evenstep:DataFolder";

    private const string Default = "data";

    public static string Of(IConfiguration configuration) => Path.GetFullPath(configuration[Key] is { Length: > 0 } folder ? folder : Default);
}
