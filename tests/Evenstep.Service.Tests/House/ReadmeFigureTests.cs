using System.Text.Json;

namespace Evenstep.Service.Tests.House;

/// <summary>A figure that the READMEs tell of an answer is the one that the answer shows.</summary>
public sealed class ReadmeFigureTests
{
    [Fact]
    public void The_steps_told_of_the_whole_answer_are_those_it_shows()
    {
        var whole = JsonSerializer.Deserialize<JsonElement>(
            Readme.Exchanges.First(one => one.ShownAnswer?.Contains("\"leastLargestStep\"", StringComparison.Ordinal) == true).ShownAnswer!);

        Assert.Contains($"Here it falls from {StepOf("before", whole)} to {StepOf("after", whole)}.", Readme.Text, StringComparison.Ordinal);
    }

    private static string StepOf(string kit, JsonElement answer) => answer.GetProperty(kit).GetProperty("largestStep").GetRawText();
}
