using Evenstep.Service.Caching;

namespace Evenstep.Service.Tests.Caching;

public sealed class AnswerKeyTests
{
    [Fact]
    public void Everything_that_decides_an_answer_is_in_its_key()
    {
        string[] keys =
        [
            AnswerKey.Of("/a", "en", "v", "{}"u8), AnswerKey.Of("/b", "en", "v", "{}"u8), AnswerKey.Of("/a", "de", "v", "{}"u8),
            AnswerKey.Of("/a", "en", "w", "{}"u8), AnswerKey.Of("/a", "en", "v", "{ }"u8), AnswerKey.Of("/a", "en", "", "v{}"u8),
            AnswerKey.Of("/ae", "n", "v", "{}"u8),
        ];

        Assert.Distinct(keys);
        Assert.Equal(keys[0], AnswerKey.Of("/a", "en", "v", "{}"u8));
    }
}
