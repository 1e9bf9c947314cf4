using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Http.Authentication;

namespace Evenstep.Service.Answering.Admission;

/// <summary>Counts work as requests, where that is wanted, so that the rate of a key also limits what its requests cost.</summary>
/// <param name="UnitsPerRequest">A request that does more work than this counts as so many more; 0 if each counts as one.
/// A unit is about a second on a usual core.</param>
internal sealed record WorkCharge(double UnitsPerRequest)
{
    public const string Key = "Evenstep:WorkPerRequest";

    /// <exception cref="InvalidOperationException">The value is out of range.</exception>
    public static WorkCharge From(IConfiguration configuration)
    {
        var units = configuration.GetValue(Key, 0.0);
        return units >= 0 && double.IsFinite(units) ? new WorkCharge(units) : throw new InvalidOperationException($"{Key} must be a number, 0 or more.");
    }

    /// <summary>Charges a rate for what a request has done beyond what the request itself was charged for.</summary>
    public void Take(KeyRate? rate, SolveClaim claim)
    {
        if (rate is not null && UnitsPerRequest > 0 && claim.UnitsSpent > UnitsPerRequest)
        {
            rate.Charge((int)Math.Min(KeyRate.MostPerMinute, claim.UnitsSpent / UnitsPerRequest));
        }
    }
}
