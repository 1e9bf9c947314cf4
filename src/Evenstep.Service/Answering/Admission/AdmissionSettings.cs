namespace Evenstep.Service.Answering.Admission;

/// <summary>How much may be under way at once. What comes beyond it is refused at once.</summary>
/// <param name="MostRequests">Requests, but for batches.</param>
/// <param name="MostBatches">Batches.</param>
/// <param name="CallerShare">The share of either, above 0 to 1, that one caller may take.</param>
/// <param name="BodyMebibytes">Bodies that are being received or are in use, together.</param>
/// <param name="MostConnections">Connections; a further one is closed.</param>
internal sealed record AdmissionSettings(int MostRequests, int MostBatches, double CallerShare, int BodyMebibytes, int MostConnections)
{
    public const string RequestsKey = "Evenstep:MostRequests";
    public const string BatchesKey = "Evenstep:MostBatches";
    public const string ShareKey = "Evenstep:CallerShare";
    public const string BodiesKey = "Evenstep:BodiesMebibytes";
    public const string ConnectionsKey = "Evenstep:MostConnections";

    private const int MostOfAll = 100_000;

    private const int RequestsPerProcessor = 64;

    public static readonly AdmissionSettings Usual = new(RequestsPerProcessor * Environment.ProcessorCount, 16, 0.5, 128, 2000);

    /// <exception cref="InvalidOperationException">A value is out of range.</exception>
    public static AdmissionSettings From(IConfiguration configuration)
    {
        var share = configuration.GetValue(ShareKey, Usual.CallerShare);
        return new AdmissionSettings(
            Count(configuration, RequestsKey, Usual.MostRequests),
            Count(configuration, BatchesKey, Usual.MostBatches),
            share is > 0 and <= 1 ? share : throw new InvalidOperationException($"{ShareKey} must be a number above 0, of at most 1."),
            Count(configuration, BodiesKey, Usual.BodyMebibytes),
            Count(configuration, ConnectionsKey, Usual.MostConnections));
    }

    private static int Count(IConfiguration configuration, string key, int usual)
    {
        var value = configuration.GetValue(key, usual);
        return value is >= 1 and <= MostOfAll ? value : throw new InvalidOperationException($"{key} must be a whole number from 1 to {MostOfAll}.");
    }
}
