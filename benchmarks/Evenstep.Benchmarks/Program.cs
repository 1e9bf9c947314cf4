using Evenstep.Benchmarks;
using Evenstep.Benchmarks.Advised;
using Evenstep.Benchmarks.Http;
using Evenstep.Benchmarks.Reports;
using Evenstep.Benchmarks.Trials;

if (args is [Floor.Command, var url, var answerPath])
{
    await Floor.RunAsync(url, answerPath);
    return 0;
}

if (args is [TrialOptions.Command, ..])
{
    if (TrialOptions.Parse(args) is { } trial)
    {
        return await TrialCommand.RunAsync(trial);
    }

    await Console.Error.WriteLineAsync(TrialOptions.Usage);
    return 2;
}

if (Options.Parse(args) is not { } options)
{
    await Console.Error.WriteLineAsync(Options.Usage);
    return 2;
}

List<string> parts = [ReportFile.Head(options.Quick)];
if (options.Engines)
{
    parts.Add(EnginesReport.Of(new EngineRuns(options).Run(), options));
}

if (options.Http)
{
    parts.Add(HttpReport.Of(await HttpRuns.RunAsync(options), options));
}

if (options.Batch)
{
    parts.Add(BatchReport.Of(await BatchRuns.RunAsync(options)));
}

if (options.Certificates)
{
    parts.Add(CertificatesReport.Of(CertificateRuns.Run(options), options));
}

if (options.Curves)
{
    parts.Add(CurvesReport.Of(CurveRuns.Run(options), options));
}

if (options.Advice)
{
    parts.Add(AdviceReport.Of(await AdviceRuns.RunAsync()));
}

// Last: from here on this process keeps to one core.
if (options.Overload)
{
    parts.Add(OverloadReport.Of(await OverloadRuns.RunAsync(options)));
}

var report = string.Join('\n', parts);
Console.WriteLine(report);
if (options.WritesReport)
{
    Progress.Tell($"written to {ReportFile.Write(report, options.FileNameEnd)}");
}

return 0;
