namespace Evenstep.Service.Answering.Solving;

/// <summary>How plans are certified.</summary>
/// <param name="Limit">The deterministic work that one certificate may take, about a second each on a usual core.</param>
/// <param name="Share">The share of plans, from 0 to 1, that are certified unasked.</param>
internal sealed record CertifySettings(double Limit, double Share)
{
    public const string LimitKey = "Evenstep:CertifyLimit";
    public const string ShareKey = "Evenstep:CertifyShare";

    private const double DefaultLimit = 5;
    private const double DefaultShare = 0.01;

    public static CertifySettings From(IConfiguration configuration)
    {
        var limit = configuration.GetValue(LimitKey, DefaultLimit);
        var share = configuration.GetValue(ShareKey, DefaultShare);
        return !(limit > 0 && double.IsFinite(limit)) ? throw new InvalidOperationException($"{LimitKey} must be a number above 0.")
            : share is not (>= 0 and <= 1) ? throw new InvalidOperationException($"{ShareKey} must be a number from 0 to 1.")
            : new CertifySettings(limit, share);
    }
}
