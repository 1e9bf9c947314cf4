using System.Reflection;
using DbUp.Builder;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>The scripts that make the tables, in this assembly: each runs once, in the order of the names.</summary>
internal static class Scripts
{
    /// <summary>Runs what has not been run yet on a database.</summary>
    /// <param name="database">The database.</param>
    /// <param name="folder">The scripts in its language.</param>
    public static void Run(UpgradeEngineBuilder database, string folder)
    {
        var beginning = $"{typeof(Scripts).Namespace}.{nameof(Scripts)}.{folder}.";
        var result = database
            .WithScriptsEmbeddedInAssembly(Assembly.GetExecutingAssembly(), name => name.StartsWith(beginning, StringComparison.Ordinal))
            .WithTransactionPerScript()
            .LogToNowhere()
            .Build()
            .PerformUpgrade();
        if (!result.Successful)
        {
            throw result.Error;
        }
    }
}
