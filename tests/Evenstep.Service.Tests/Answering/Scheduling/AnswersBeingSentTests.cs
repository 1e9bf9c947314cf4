using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Tests.Answering.Metrics;

namespace Evenstep.Service.Tests.Answering.Scheduling;

public sealed class AnswersBeingSentTests
{
    private static readonly string Body = Repository.Example("recommendation-spectacles");

    [Fact]
    public void An_answer_counts_until_it_is_taken_and_only_once()
    {
        var answers = new AnswersBeingSent();
        var first = answers.Count(10);
        using var second = answers.Count(5);

        Assert.Equal(15, answers.Bytes);
        first.Dispose();
        first.Dispose();
        Assert.Equal(5, answers.Bytes);
    }

    [Fact]
    public void A_solve_leaves_the_eldest_its_room_beside_the_answers()
    {
        var answers = new AnswersBeingSent();
        var memory = new SolvesMemory(new SchedulerSettings(100, 60, 0), answers);
        ScheduledSolve[] solves = [.. Enumerable.Range(0, 2).Select(_ => new ScheduledSolve(LongRun(), () => { }) { Held = 20 })];
        Array.ForEach(solves, memory.Enter);

        Assert.True(memory.HasRoomFor(solves[1]));
        using (answers.Count(21))
        {
            Assert.False(memory.HasRoomFor(solves[1]));
            Assert.True(memory.HasRoomFor(solves[0]));
        }

        Assert.True(memory.HasRoomFor(solves[1]));
    }

    [Fact]
    public async Task While_answers_take_half_of_the_memory_no_request_is_admitted()
    {
        await using var service = new WatchedService();
        using (service.Get<AnswersBeingSent>().Count(service.Get<SchedulerSettings>().MostBytesOfAnswers))
        {
            Assert.Equal(503, (await service.RecommendAsync(Body)).Status);
        }

        Assert.Equal(200, (await service.RecommendAsync(Body)).Status);
        Assert.Equal(0, service.Get<AnswersBeingSent>().Bytes);
    }

    /// <summary>Beyond the first level.</summary>
    private static SolveClaim LongRun() => new("caller", SolvePriority.Single) { Ran = TimeSpan.FromSeconds(1) };
}
