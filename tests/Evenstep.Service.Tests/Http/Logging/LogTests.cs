using System.Globalization;
using System.Text.RegularExpressions;
using Evenstep.Service.Http.Logging;
using Evenstep.Service.Tests.Answering.Metrics;
using Evenstep.Service.Tests.Catalogues.Storing;
using Evenstep.Service.Tests.Http.Hosting;
using Serilog.Events;
using Serilog.Parsing;

namespace Evenstep.Service.Tests.Http.Logging;

/// <summary>No caller can make up a line of the log, or have a terminal obey.</summary>
public sealed partial class LogTests
{
    /// <summary>As it would be after a line feed; with what a terminal obeys, what other programs take for the end of a line, and what turns the
    /// direction.</summary>
    private const string Forged = "\r\n[12:00:00 INF] forged\u001b[2J\u0085\u2028\u2029\0\u202e";

    [Fact]
    public async Task Whatever_is_sent_the_console_gets_one_line_an_event()
    {
        using var data = new DataFolder();
        var (service, _) = await ServiceProcess.StartAsync(data.Path);
        using var logging = service;
        var escaped = Uri.EscapeDataString(Forged.Replace("\0", "", StringComparison.Ordinal));
        await service.SendAsync(HttpMethod.Get, $"/v1/{escaped}?{escaped}={escaped}");
        await service.SendAsync(HttpMethod.Put, $"/v1/catalogues/{escaped}", "{}");
        await service.SendAsync(HttpMethod.Get, $"/v1/catalogues/demo/items/{escaped}/match?telescope={escaped}");
        await service.SendAsync(HttpMethod.Post, "/v1/recommendations", $"{{ \"{Forged}\": \"{Forged}\" }}");
        await service.SendAsync(HttpMethod.Post, "/v1/recommendations/batch", Forged, "application/x-ndjson");
        await RawConnection.AskAsync(service.Port, "GET /raw\u001b[2J HTTP/1.1\r\nHost: localhost\r\nX-\u001b: \u001b[2J\u0085\r\nConnection: close\r\n\r\n");
        await RawConnection.AskAsync(service.Port, "FORGED\u001b[2J /v1/targets HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
        await RawConnection.AskAsync(service.Port, "GET /v1/targets HTTP/1.1\r\nHost: forged.example\r\nOrigin: \u0085forged\r\nConnection: close\r\n\r\n");

        await Eventually.TrueAsync(() => service.Said.Count(line => line.Contains("/v1/", StringComparison.Ordinal)) >= 5);

        Assert.Contains(service.Said, line => line.Contains(@"\u000D\u000A[12:00:00 INF] forged\u001B[2J\u0085\u2028\u2029\u202E", StringComparison.Ordinal));
        Assert.All(service.Said.Where(line => line.Length > 0), line => Assert.Matches(Line(), line));
        Assert.DoesNotContain(service.Said, line => line.StartsWith("[12:00:00 INF] forged", StringComparison.Ordinal));
    }

    [Fact]
    public void A_body_and_the_message_of_an_exception_stay_within_their_lines()
    {
        var written = Write("The referee found fault with a plan. Request: {Body}", Forged, new InvalidDataException(Forged, new IOException(Forged)));

        var lines = written.TrimEnd('\n').Split('\n');
        Assert.Equal(3, lines.Length);
        Assert.StartsWith("[09:26:53 FTL] The referee", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("   System.IO.InvalidDataException: ", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("   Caused by System.IO.IOException: ", lines[2], StringComparison.Ordinal);
        Assert.All(lines, line => Assert.EndsWith(@"\u000D\u000A[12:00:00 INF] forged\u001B[2J\u0085\u2028\u2029\u0000\u202E", line, StringComparison.Ordinal));
    }

    [Fact]
    public void The_frames_of_a_stack_stand_below_it()
    {
        var thrown = Record.Exception(() => int.Parse("x", CultureInfo.InvariantCulture))!;

        var lines = Write("Failed {Body}", "", thrown).TrimEnd('\n').Split('\n');

        Assert.True(lines.Length > 2);
        Assert.All(lines[2..], line => Assert.StartsWith("      at ", line, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("plain, with 1 [bracket] and a \\", "plain, with 1 [bracket] and a \\")]
    [InlineData("Größe: 5 µm – “ok” 🔭", "Größe: 5 µm – “ok” 🔭")]
    [InlineData("a\tb\u007fc", @"a\u0009b\u007Fc")]
    public void What_is_printed_as_itself_stays_so(string text, string written) => Assert.Equal(written, OneLineFormatter.Visible(text));

    [Fact]
    public void Half_a_pair_of_surrogates_is_marked() => Assert.Equal("half \ufffd a pair", OneLineFormatter.Visible("half \ud800 a pair"));

    private static string Write(string template, string body, Exception exception)
    {
        var time = new DateTimeOffset(2026, 3, 14, 9, 26, 53, TimeSpan.Zero);
        var written = new LogEvent(
            time, LogEventLevel.Fatal, exception, new MessageTemplateParser().Parse(template), [new LogEventProperty("Body", new ScalarValue(body))]);
        using var output = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        new OneLineFormatter().Format(written, output);
        return output.ToString();
    }

    /// <summary>The head of an event, or a line of its exception; nothing in it is a control character or ends a line for somebody.</summary>
    [GeneratedRegex(@"^(\[\d\d:\d\d:\d\d [A-Z]{3}\] |   )[^\p{Cc}\p{Cf}\p{Zl}\p{Zp}]*$")]
    private static partial Regex Line();
}
