using Evenstep.Planning.Solving;

namespace Evenstep.Service.Answering.Solving;

/// <summary>What certifying needs.</summary>
internal static class CertifyingSetup
{
    public static void AddCertifying(this IServiceCollection services, IConfiguration configuration)
    {
        services.AddSingleton(CertifySettings.From(configuration));
        services.AddSingleton<SecondProver>(Certifier.Certify);
        services.AddSingleton<Certificates>();
        services.AddSingleton<SampleQueue>();
        services.AddHostedService<SampleWorker>();
    }
}
