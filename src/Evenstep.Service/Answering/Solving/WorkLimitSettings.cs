using Evenstep.Planning.Budgets;

namespace Evenstep.Service.Answering.Solving;

/// <summary>Reads from the configuration what one request may take.</summary>
internal static class WorkLimitSettings
{
    public const string WorkKey = "Evenstep:WorkLimit";
    public const string MemoryKey = "Evenstep:MemoryLimitMebibytes";

    private const long Mebibyte = 1024 * 1024;

    /// <exception cref="InvalidOperationException">A value is not a number above 0.</exception>
    public static WorkLimits From(IConfiguration configuration) => new(
        Positive(configuration, WorkKey, WorkLimits.Usual.Units),
        (long)(Positive(configuration, MemoryKey, WorkLimits.Usual.Bytes / (double)Mebibyte) * Mebibyte));

    private static double Positive(IConfiguration configuration, string key, double usual)
    {
        var value = configuration.GetValue(key, usual);
        return value > 0 && double.IsFinite(value) ? value : throw new InvalidOperationException($"{key} must be a number above 0.");
    }
}
