# report
