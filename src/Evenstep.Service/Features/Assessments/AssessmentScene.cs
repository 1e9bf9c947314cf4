using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Pictures;

namespace Evenstep.Service.Features.Assessments;

/// <summary>What the picture of an assessment shows.</summary>
internal static class AssessmentScene
{
    public static LadderScene Of(AssessmentAsked asked)
    {
        var kit = Kit.Of(asked.Problem, []);
        return new LadderScene { Stages = [new Stage(Stage.Kept, kit)], Cautions = KitRemarks.CautionsOf(kit) };
    }
}
