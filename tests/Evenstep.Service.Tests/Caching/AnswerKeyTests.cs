using Evenstep.Service.Caching;
using Evenstep.Service.Door;
using Evenstep.Service.Wording;

namespace Evenstep.Service.Tests.Caching;

public sealed class AnswerKeyTests
{
    [Fact]
    public void Everything_that_decides_an_answer_is_in_its_key()
    {
        var (english, german) = (Json(Language.English), Json(Language.German));
        string[] keys =
        [
            AnswerKey.Of("/a", english, "v", "{}"u8), AnswerKey.Of("/b", english, "v", "{}"u8), AnswerKey.Of("/a", german, "v", "{}"u8),
            AnswerKey.Of("/a", english, "w", "{}"u8), AnswerKey.Of("/a", english, "v", "{ }"u8), AnswerKey.Of("/a", english, "", "v{}"u8),
            AnswerKey.Of("/a", english with { Form = AnswerForm.Picture }, "v", "{}"u8),
        ];

        Assert.Distinct(keys);
        Assert.Equal(keys[0], AnswerKey.Of("/a", english, "v", "{}"u8));
    }

    private static Manner Json(Language language) => new(AnswerForm.Json, language);
}
