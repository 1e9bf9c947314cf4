using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Http.Authentication;

namespace Evenstep.Service.Catalogues;

/// <summary>Where catalogues are kept.</summary>
internal static class StorageSetup
{
    /// <summary>Of the connection string.</summary>
    public const string DatabaseName = "Evenstep";

    public const string MegabytesKey = "Evenstep:DataMegabytes";

    private const string FileName = "evenstep.db";
    private const int MostMegabytes = 1_000_000;

    public static void AddCatalogues(this IServiceCollection services, IConfiguration configuration)
    {
        services.AddSingleton(new CatalogueRegistry(CatalogueFiles.From(configuration)));

        // Made by the container, which then closes it; but what is configured wrongly must stop the start.
        var (database, path, megabytes) = (configuration.GetConnectionString(DatabaseName), PathOf(configuration), MegabytesOf(configuration));
        services.AddSingleton<CatalogueStore>(_ => string.IsNullOrEmpty(database) ? new SqliteStore(path, megabytes) : new PostgresStore(database));
        services.AddSingleton<StorageReader>();
        services.AddHostedService<StorageWatch>();
        services.AddSingleton<CatalogueHandler>();

        // Whose request it is, and what its sender sees.
        services.AddScoped(request => request.GetRequiredService<Caller>().Owner);
        services.AddScoped(request => request.GetRequiredService<CatalogueRegistry>().Of(request.GetRequiredService<Owner>()));
    }

    private static string PathOf(IConfiguration configuration) => Path.Combine(StorageFolder.Of(configuration), FileName);

    private static int? MegabytesOf(IConfiguration configuration) => configuration.GetValue<int?>(MegabytesKey) switch
    {
        null => null,
        >= 1 and <= MostMegabytes and var megabytes => megabytes,
        _ => throw new InvalidOperationException($"{MegabytesKey} must be a whole number from 1 to {MostMegabytes}."),
    };
}
