using System.Globalization;

namespace Evenstep.Service.Recommendations;

/// <summary>How much waiting for a place the service puts up with before it turns single requests away. Lines of batches wait
/// without end: they are few at a time, and their senders are in no hurry.</summary>
/// <param name="MostWaiting">So many may wait at once.</param>
/// <param name="LongestWait">So long one may wait.</param>
internal sealed record Patience(int MostWaiting, TimeSpan LongestWait)
{
    public const string MostWaitingKey = "Evenstep:MostWaiting";
    public const string LongestWaitKey = "Evenstep:LongestWaitSeconds";

    private const int MostOfAll = 100_000;
    private const double LongestOfAll = 3600;

    public static readonly Patience Usual = new(1000, TimeSpan.FromSeconds(10));

    public static Patience From(IConfiguration configuration)
    {
        var most = configuration.GetValue(MostWaitingKey, Usual.MostWaiting);
        var longest = configuration.GetValue(LongestWaitKey, Usual.LongestWait.TotalSeconds);
        return new Patience(
            most is >= 0 and <= MostOfAll
                ? most : throw new InvalidOperationException($"{MostWaitingKey} must be a whole number from 0 to {MostOfAll}."),
            longest is > 0 and <= LongestOfAll
                ? TimeSpan.FromSeconds(longest)
                : throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"{LongestWaitKey} must be a number above 0, of at most {LongestOfAll}.")));
    }
}
