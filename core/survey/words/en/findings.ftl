# findings
