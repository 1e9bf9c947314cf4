using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues.Content;

namespace Evenstep.Service.Answering.Solving;

/// <summary>A problem with all that is needed to replay it.</summary>
/// <param name="Problem">What is to be planned.</param>
/// <param name="Catalogue">The catalogue it was made of.</param>
/// <param name="Body">The request it was read from, as received.</param>
internal sealed record PlanningCase(PurchaseProblem Problem, Catalogue Catalogue, ReadOnlyMemory<byte> Body);
