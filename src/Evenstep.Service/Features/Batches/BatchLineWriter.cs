using System.Buffers;
using System.IO.Pipelines;
using System.Text.Encodings.Web;
using System.Text.Json;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Contract.Problems;

namespace Evenstep.Service.Features.Batches;

/// <summary>Writes the lines of an answer, and sends them off when they are many or the next one is yet to come.</summary>
internal sealed class BatchLineWriter(PipeWriter body) : IDisposable
{
    private const int MostBytesHeld = 32 * 1024;

    private readonly Utf8JsonWriter json = new(body, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, SkipValidation = true });
    private long held;

    public int Lines { get; private set; }

    public int Problems { get; private set; }

    public async ValueTask WriteAsync(AnsweredLine line, CancellationToken cancellationToken)
    {
        Write(line);
        if (held > MostBytesHeld)
        {
            await SendAsync(cancellationToken);
        }
    }

    /// <summary>Sends off what has been written.</summary>
    /// <exception cref="OperationCanceledException">Nobody is there any more.</exception>
    public async ValueTask SendAsync(CancellationToken cancellationToken)
    {
        if (held == 0)
        {
            return;
        }

        held = 0;
        if ((await body.FlushAsync(cancellationToken)).IsCompleted)
        {
            throw new OperationCanceledException("The caller has left.");
        }
    }

    public void Dispose() => json.Dispose();

    private void Write(AnsweredLine line)
    {
        json.Reset();
        json.WriteStartObject();
        json.WriteString("id", line.Id);
        if (line.Id is null)
        {
            json.WriteNumber("line", line.Number);
        }

        WriteWhatCameOfIt(line);
        json.WriteEndObject();
        json.Flush();
        body.Write("\n"u8);
        held += json.BytesCommitted + 1;
        Lines++;
    }

    private void WriteWhatCameOfIt(AnsweredLine line)
    {
        if (line.Answer is { } answer)
        {
            // As it is: every answer is one line, whether it goes out alone or here.
            json.WritePropertyName("recommendation");
            json.WriteRawValue(answer.Body, skipInputValidation: true);
            return;
        }

        Problems++;
        json.WritePropertyName("problem");
        JsonSerializer.Serialize(json, line.Problem!.Document(), ProblemJson.In(Language.English).ProblemDocument);
    }
}
