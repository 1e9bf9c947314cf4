using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Reading;
using Evenstep.Service.Wording;

namespace Evenstep.Service.Tests;

public sealed class WordingTests
{
    [Fact]
    public void Every_reason_and_every_exclusion_has_a_sentence()
    {
        Assert.All(Reasons.Codes, code => Assert.Contains($"reason/{code}", English.Sentences.Keys));
        Assert.All(Words<Excluded>.All, code => Assert.Contains($"exclusion/{code}", English.Sentences.Keys));
    }

    [Fact]
    public void A_sentence_is_filled_with_values_as_prose_writes_them()
    {
        var remark = new Remark(Reasons.FillsStep, [RemarkValue.Power("from", 81.2), RemarkValue.Power("to", 203), RemarkValue.Power("power", 131.04)]);

        var answer = Phrase.Of("reason", remark);

        Assert.Equal("Fills the jump from 81x to 203x with 131x.", answer.Text);
        Assert.Equal("""{"from":81.2,"to":203,"power":131}""", answer.Values.ToJsonString());
    }
}
