using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Writes the items that are no candidates, counted by reason or listed.</summary>
internal static class ExclusionWriter
{
    public static ExcludedAnswer Write(RecommendationAsked asked, Candidacy candidacy) => asked.Excluded == ExcludedAs.Count
        ? new ExcludedAnswer(CountsOf(candidacy), null)
        : new ExcludedAnswer(null, [.. candidacy.Exclusions.Select(exclusion => Listed(asked, exclusion))]);

    /// <summary>In the order in which the reasons are looked for.</summary>
    private static OrderedDictionary<string, int> CountsOf(Candidacy candidacy) => new(
        candidacy.Exclusions.GroupBy(exclusion => exclusion.Reason)
            .OrderBy(group => group.Key)
            .Select(group => KeyValuePair.Create(Words<Excluded>.Of(group.Key), group.Count())));

    private static ExclusionAnswer Listed(RecommendationAsked asked, Exclusion exclusion)
    {
        var detail = ExclusionDetail.Of(asked, exclusion);
        return new ExclusionAnswer
        {
            ItemId = exclusion.Item.Id,
            Reason = exclusion.Reason,
            Detail = detail.Text,
            Values = detail.Values,
        };
    }
}
