using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests;

/// <summary>The language that is not the usual one.</summary>
internal static class German
{
    public static readonly Language Language = Language.All.Single(language => language.Tag == "de");
}
